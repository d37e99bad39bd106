import "../seat/answering.css";
import "./look.css";
import { useEffect, useState } from "preact/hooks";
import type { OwnKey } from "../line/own_key";
import { useStore } from "../line/store";
import { type Announcer, LiveRegion } from "../parts/announcer";
import { Complaint } from "../parts/notice";
import type { MissedReview, PracticeSet, SecondLook, Today } from "../wire";
import { countOf } from "../words/numbers";
import type { Fetched } from "./api";
import { Loaded } from "./loaded";
import { LookFlow } from "./look_flow";
import { MockPage } from "./mock/mock_page";
import { PracticeForm } from "./practice_form";
import { LAST, type Route, routeOf } from "./routes";
import type { MineSession } from "./session";
import { TodayPage } from "./today_page";

/** The player's own page. */
export function MinePage(props: { session: MineSession; playerKey: OwnKey; announcer: Announcer }) {
  const { session, playerKey, announcer } = props;
  const route = useRoute();
  const wide = route.page !== "practice";
  return (
    <div class={wide ? "seat mine seat-wide" : "seat mine"}>
      <header class="seat_top no-print">
        <nav class="mine_nav" aria-label="Pages">
          {route.page !== "today" && <a href="#/">Today's page</a>}
          <a href="/records">Records</a>
          <a href="/">Front page</a>
        </nav>
        <KeptWord session={session} />
      </header>
      <main class="seat_main">
        <ServerComplaint session={session} />
        <RoutePage route={route} session={session} playerKey={playerKey} say={announcer.say} />
      </main>
      <LiveRegion announcer={announcer} />
    </div>
  );
}

/** A quiet word while there is no line: what was answered is kept. */
function KeptWord({ session }: { session: MineSession }) {
  const line = useStore(session.line);
  const waiting = useStore(session.waiting);
  if (line === "open") return null;
  return (
    <p class="mine_kept" role="status">
      {waiting === 0 ? "off line" : `off line: ${countOf(waiting, "answer")} kept`}
    </p>
  );
}

function ServerComplaint({ session }: { session: MineSession }) {
  return <Complaint text={useStore(session.complaint)} />;
}

interface PageProps {
  session: MineSession;
  say: (text: string) => void;
}

function RoutePage({ route, session, playerKey, say }: PageProps & { route: Route; playerKey: OwnKey }) {
  switch (route.page) {
    case "today":
      return (
        <OfToday session={session}>
          {(today) => <TodayPage {...{ session, today, playerKey, say }} />}
        </OfToday>
      );
    case "practice":
      return (
        <OfToday session={session}>
          {(today) => (
            <PracticeForm session={session} courses={today.courses} course={today.settings.course} />
          )}
        </OfToday>
      );
    case "look":
      return <LookPage room={route.room} session={session} say={say} />;
    case "set":
      return <SetPage key={route.set} set={route.set} session={session} say={say} />;
  }
}

function OfToday(props: { session: MineSession; children: (today: Today) => preact.ComponentChildren }) {
  const today = useStore(props.session.today);
  return (
    <Loaded fetched={today} onAgain={() => void props.session.refresh()}>
      {props.children}
    </Loaded>
  );
}

/** What is due today, what one review left, or what the last one left. */
function LookPage({ room, session, say }: PageProps & { room: string }) {
  if (room !== "" && room !== LAST) return <ReviewLooks key={room} room={room} session={session} say={say} />;
  return (
    <OfToday session={session}>
      {(today) => {
        const last = room === LAST ? lastReview(today) : null;
        return last ? (
          <ReviewLooks key={last.room} room={last.room} session={session} say={say} />
        ) : (
          <LookFlow title="Due today" looks={today.looks} session={session} say={say} />
        );
      }}
    </OfToday>
  );
}

/** The review that was finished last; one that still goes on is later than all. */
function lastReview(today: Today): MissedReview | null {
  const when = (review: MissedReview) => review.finished_at ?? Number.POSITIVE_INFINITY;
  return [...today.missed_reviews].sort((one, other) => when(other) - when(one))[0] ?? null;
}

function ReviewLooks({ room, session, say }: PageProps & { room: string }) {
  const [fetched, again] = useRead<SecondLook>(session, `/mine/api/second-look/${encodeURIComponent(room)}`);
  return (
    <Loaded fetched={fetched} onAgain={again}>
      {(look) => <LookFlow title={look.title} looks={look.looks} session={session} say={say} />}
    </Loaded>
  );
}

function SetPage({ set, session, say }: PageProps & { set: string }) {
  const [fetched, again] = useRead<PracticeSet>(session, `/mine/api/practice/${encodeURIComponent(set)}`);
  return (
    <Loaded fetched={fetched} onAgain={again}>
      {(dealt) =>
        dealt.mode === "mock" ? (
          <MockPage set={dealt} session={session} say={say} />
        ) : (
          <LookFlow title={dealt.title} looks={dealt.looks} session={session} say={say} />
        )
      }
    </Loaded>
  );
}

function useRead<T>(session: MineSession, path: string): [Fetched<T> | null, () => void] {
  const [fetched, setFetched] = useState<Fetched<T> | null>(null);
  const read = () => {
    setFetched(null);
    void session.read<T>(path).then(setFetched);
  };
  useEffect(read, [session, path]);
  return [fetched, read];
}

function useRoute(): Route {
  const [route, setRoute] = useState(() => routeOf(location.hash));
  useEffect(() => {
    const hear = () => {
      setRoute(routeOf(location.hash));
      window.scrollTo({ top: 0 });
    };
    window.addEventListener("hashchange", hear);
    return () => window.removeEventListener("hashchange", hear);
  }, []);
  return route;
}

import "./console.css";
import "./start.css";
import { useEffect, useState } from "preact/hooks";
import type { ServerClock } from "../line/server_clock";
import { useStore } from "../line/store";
import { type Announcer, useAnnouncements, useClockCalls } from "../parts/announcer";
import { ClockFigures, ClockRule } from "../parts/clock";
import { useLeft } from "../parts/left";
import { Complaint, LineNotice } from "../parts/notice";
import type { DeskItem, DeskSettings, DeskView } from "../wire";
import { countOf } from "../words/numbers";
import { ActionBar } from "./action_bar";
import { DoorPanel } from "./door_panel";
import { PHASE_WORD } from "./family_words";
import { ItemList } from "./item_list";
import { ItemSheet } from "./item_sheet";
import { order } from "./orders";
import { OwnTimes } from "./own_times";
import { Roster } from "./roster";
import type { DeskSession } from "./session";
import { TalkPanel, useAdvice } from "./talk_panel";

/** The desk with a review on it: items, the round, the roster, and the next step below. */
export function Console(props: {
  session: DeskSession;
  view: DeskView;
  settings: DeskSettings | null;
  announcer: Announcer;
}) {
  const { session, view, announcer } = props;
  const state = useStore(session.line.state);
  const complaint = useStore(session.complaint);
  const left = useLeft(view.public.clock, session.line.clock);
  const [shown, show] = useShownItem(view);
  useAnnouncements(announcer, { public: view.public, own: null });
  useClockCalls(announcer, view.public.clock, left);
  useEffect(() => {
    if (complaint) announcer.say(complaint);
  }, [announcer, complaint]);
  const talk = shown && view.talks.find((one) => one.round === shown.round && shown.position === null);
  useAdvice(announcer, view);
  const say = (draft: Parameters<typeof order>[2]) => order(session.line, session.complaint, draft);
  return (
    <div class="console">
      <ClockRule face={view.public.clock} left={left} />
      <header class="console_top">
        <div class="console_title">
          <h1>{view.public.title || "Untitled review"}</h1>
          <p>
            {view.public.course} · {PHASE_WORD[view.public.phase]}
          </p>
        </div>
        <CountsPanel view={view} clock={session.line.clock} />
        <ClockFigures face={view.public.clock} left={left} />
        <DoorPanel view={view} joinAddress={props.settings?.join_address ?? location.origin} />
      </header>
      <ItemList view={view} shown={shown} onShow={show} onOrder={say} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: where it scrolls, the keyboard must be able to scroll it */}
      <main class="console_main" tabIndex={0}>
        <LineNotice state={state} kept="The review is safe on the server." />
        <Complaint text={complaint} />
        {talk && <TalkPanel talk={talk} view={view} />}
        {shown ? (
          <ItemSheet key={shown.id} item={shown} view={view} onOrder={say} />
        ) : (
          <p class="waiting">No item is left.</p>
        )}
      </main>
      <Roster view={view} settings={props.settings} onOrder={say} />
      <ActionBar view={view} clock={session.line.clock} onOrder={say} />
    </div>
  );
}

/** The item under the host's eye: the current round's, until another is picked from the list. */
function useShownItem(view: DeskView): [DeskItem | undefined, (id: string) => void] {
  const [picked, pick] = useState("");
  const current = view.items.find((item) => item.round === Math.max(1, view.public.round)) ?? view.items[0];
  useEffect(() => pick(""), [view.public.round, view.public.phase]);
  return [view.items.find((item) => item.id === picked) ?? current, pick];
}

function CountsPanel({ view, clock }: { view: DeskView; clock: ServerClock }) {
  const { phase, players, round, rounds } = view.public;
  if (phase === "preparing") return <p class="console_counts">{countOf(view.items.length, "item")} dealt</p>;
  return (
    <p class="console_counts">
      {round > 0 && (
        <span>
          round <b>{round}</b> of {rounds}
        </span>
      )}
      {phase === "stations" || phase === "answering" || phase === "answering again" || phase === "closed" ? (
        <span>
          <b>{view.answered}</b> of {players} answered
        </span>
      ) : (
        <span>
          <b>{players}</b> in the room
        </span>
      )}
      <OwnTimes view={view} clock={clock} />
    </p>
  );
}

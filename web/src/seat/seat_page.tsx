import { useEffect, useRef } from "preact/hooks";
import { AnsweringAtBench } from "../bench/bench_answering";
import { BenchResult } from "../bench/bench_result";
import { useStore } from "../line/store";
import { type Announcer, LiveRegion, useAnnouncements, useClockCalls } from "../parts/announcer";
import { ClockFigures, ClockRule } from "../parts/clock";
import { Complaint, LineNotice } from "../parts/notice";
import type { OwnFlag, OwnView, PublicView } from "../wire";
import { countOf } from "../words/numbers";
import { roundTitle } from "../words/round_title";
import { turnTitle } from "../words/stations";
import { Answering } from "./answering";
import { AtStation } from "./at_station";
import { ClaimPanel } from "./claim_panel";
import { Closed } from "./closed";
import { Door } from "./door";
import { EarlierFlags } from "./earlier_flags";
import { Finished } from "./finished";
import { FlagButton, FlagWords, useFlag } from "./flag";
import { Gathering, SentOut } from "./gathering";
import { GroupGathering } from "./group_gathering";
import type { HandIn } from "./hand_in";
import { Held } from "./held";
import { closedRound, keepRounds, keptRounds, withRound } from "./history";
import { AlwaysMoreTime, WithMoreTime } from "./more_time";
import { OwnTimeNote, useLived } from "./own_time";
import { PauseButton, PauseNotice } from "./pause";
import { ReadyBar } from "./ready_bar";
import type { SeatSession } from "./session";
import { TalkPhase } from "./talking";

/** The player's page. */
export function SeatPage({ session, announcer }: { session: SeatSession; announcer: Announcer }) {
  const place = useStore(session.place);
  const hands = useStore(session.hands);
  const seen = useStore(session.line.seen);
  const seated = place === "seated" && seen.public !== null && hands !== null;
  return (
    <>
      {seated && seen.public && hands ? (
        <Seat session={session} view={seen.public} own={seen.own} hands={hands} announcer={announcer} />
      ) : (
        <Door session={session} place={place} announcer={announcer} />
      )}
      <LiveRegion announcer={announcer} />
    </>
  );
}

interface SeatProps {
  session: SeatSession;
  view: PublicView;
  own: OwnView | null;
  hands: HandIn;
  announcer: Announcer;
}

function Seat({ session, view: told, own, hands, announcer }: SeatProps) {
  const state = useStore(session.line.state);
  const { view, left, late } = useLived(told, own, session.line.clock);
  const privately = useStore(session.privately);
  const handed = useStore(hands.handed);
  const main = useRef<HTMLElement>(null);
  const flag = useFlag(session.line, view, own, announcer.say);
  useAnnouncements(announcer, { public: view, own });
  useClockCalls(announcer, view.clock, left);
  useEffect(() => {
    if (privately) announcer.say(privately);
  }, [announcer, privately]);
  useKeptRounds(view, own);
  useTopOnPhase(main, view.phase);
  if (own?.removed) return <SentOut by={view.group ? "Whoever opened this room" : "The host"} />;
  return (
    <div class={`seat seat-${view.phase.replace(" ", "-")}`}>
      <ClockRule face={view.clock} left={left} />
      <header class="seat_top">
        <p>{topText(view)}</p>
        {view.group && <PauseButton view={view} group={view.group} line={session.line} />}
        {flag && <FlagButton flag={flag} />}
        <ClockFigures face={view.clock} left={left} />
      </header>
      <main class="seat_main" ref={main}>
        <LineNotice state={state} kept="Your seat and your answers are kept." />
        {flag?.open && <FlagWords flag={flag} />}
        {own && own.from_round > 1 && own.from_round === view.round && view.phase === "answering" && (
          <p class="seat_late">You joined at round {own.from_round}; your marks count from here.</p>
        )}
        <Complaint text={privately} />
        {view.group && <PauseNotice view={view} group={view.group} line={session.line} />}
        {view.group && view.phase === "answering" && (
          <p class="seat_waiting">
            {countOf(view.group.present, "player")} here, waiting for {view.group.waited_for}
          </p>
        )}
        <WithMoreTime {...{ view: told, own, announcer, left, handed, line: session.line }}>
          <OwnTimeNote view={view} own={own} late={late} />
          <PhaseOfSeat view={view} own={own} hands={hands} session={session} say={announcer.say} />
        </WithMoreTime>
        <AlwaysMoreTime view={told} own={own} line={session.line} announcer={announcer} />
      </main>
    </div>
  );
}

function PhaseOfSeat(props: {
  view: PublicView;
  own: OwnView | null;
  hands: HandIn;
  session: SeatSession;
  say: (text: string) => void;
}) {
  const { view, own, hands, session, say } = props;
  if (view.phase === "finished") return <Finished view={view} own={own} line={session.line} say={say} />;
  if (view.phase === "stations") {
    return <AtStation view={view} own={own} hands={hands} line={session.line} say={say} />;
  }
  if (view.phase === "answering" && view.item) {
    const known = own?.answer?.round === view.round ? own.answer : null;
    if (view.benches?.answers && own?.bench?.bench) {
      const at = { view, item: view.item, known, hands, say };
      return <AnsweringAtBench {...at} bench={own.bench} line={session.line} />;
    }
    return <Answering view={view} item={view.item} known={known} hands={hands} say={say} />;
  }
  if ((view.phase === "talking" || view.phase === "answering again") && view.item) {
    return <TalkPhase view={view} item={view.item} own={own} hands={hands} say={say} />;
  }
  if (view.result && view.item) {
    return (
      <>
        {own?.bench && <BenchResult bench={own.bench} />}
        <Closed view={view} own={own} result={view.result} />
        {own && <EarlierFlags flags={otherFlags(view, own)} line={session.line} say={say} />}
        {own?.claim && !own.claim.claimed && <ClaimPanel claim={own.claim} line={session.line} say={say} />}
        {view.group && view.phase === "explained" && (
          <ReadyBar view={view} group={view.group} own={own} line={session.line} />
        )}
      </>
    );
  }
  if (view.phase === "closed" && view.item) return <Held view={view} item={view.item} own={own} />;
  if (view.group) {
    return <GroupGathering view={view} group={view.group} own={own} line={session.line} say={say} />;
  }
  return <Gathering view={view} own={own} line={session.line} say={say} />;
}

function otherFlags(view: PublicView, own: OwnView): OwnFlag[] {
  return own.flags.filter((one) => one.round !== view.round);
}

function topText(view: PublicView): string {
  if (view.phase === "stations" && view.stations) return turnTitle(view.stations);
  if (view.phase === "finished" || view.round === 0) return view.title;
  return roundTitle(view);
}

/** Keeps each closed round on this device, to be read again at the end. */
function useKeptRounds(view: PublicView, own: OwnView | null): void {
  useEffect(() => {
    const round = closedRound(view, own);
    if (round !== null) keepRounds(view.door_code, withRound(keptRounds(view.door_code), round));
  }, [view, own]);
}

/** With the record the page begins anew at its top; where focus was lost it goes to the stem. */
function useTopOnPhase(main: { current: HTMLElement | null }, phase: PublicView["phase"]): void {
  useEffect(() => {
    if (phase === "explained" || phase === "finished") window.scrollTo({ top: 0 });
    const focused = document.activeElement;
    if (focused === null || focused === document.body) {
      main.current?.querySelector<HTMLElement>("#stem")?.focus({ preventScroll: true });
    }
  }, [main, phase]);
}

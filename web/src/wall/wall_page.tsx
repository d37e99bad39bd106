import "./wall.css";
import { useRef } from "preact/hooks";
import type { Line } from "../line/line";
import { counts } from "../line/seen";
import { type Store, useStore } from "../line/store";
import { type Announcer, LiveRegion, useAnnouncements, useClockCalls } from "../parts/announcer";
import { ClockFigures, ClockRule } from "../parts/clock";
import { useLeft } from "../parts/left";
import { LineNotice } from "../parts/notice";
import { ViewMenu } from "../parts/view_menu";
import type { PublicView } from "../wire";
import { countOf } from "../words/numbers";
import { roundTitle } from "../words/round_title";
import { turnTitle } from "../words/stations";
import { useFit } from "./fit";
import { PhaseOfWall } from "./phases";

/** The projected page. It knows the public view and nothing else, so it is safe to mirror. */
export function WallPage(props: {
  line: Line;
  complaint: Store<string>;
  joinAddress: string;
  announcer: Announcer;
}) {
  const seen = useStore(props.line.seen);
  const state = useStore(props.line.state);
  const complaint = useStore(props.complaint);
  return (
    <>
      {seen.public ? (
        <Wall {...props} view={seen.public} answered={counts(seen).answered} players={counts(seen).players} />
      ) : (
        <main class="message">
          <h1>{complaint ? "No wall to show" : "The wall is coming"}</h1>
          <p>{complaint || (state === "open" ? "One moment." : "Connecting to the server …")}</p>
        </main>
      )}
      <LiveRegion announcer={props.announcer} />
    </>
  );
}

/** A short record leaves room that its letters may use. */
const LARGER_RECORD = 1.5;

interface WallProps {
  line: Line;
  joinAddress: string;
  announcer: Announcer;
  view: PublicView;
  answered: number | null;
  players: number;
}

function Wall({ line, joinAddress, announcer, view, answered, players }: WallProps) {
  const state = useStore(line.state);
  const left = useLeft(view.clock, line.clock);
  const main = useRef<HTMLElement>(null);
  useAnnouncements(announcer, { public: view, own: null });
  useClockCalls(announcer, view.clock, left);
  useFit(main, view.phase === "explained" ? LARGER_RECORD : 1);
  return (
    <div class={`wall wall-${view.phase.replace(" ", "-")}`}>
      <ClockRule face={view.clock} left={left} />
      <header class="wall_top">
        <p>{topText(view)}</p>
        <ClockFigures face={view.clock} left={left} />
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: where it scrolls, the keyboard must be able to scroll it */}
      <main class="wall_main" ref={main} tabIndex={0}>
        <LineNotice state={state} kept="Answers that were handed in are safe." />
        <PhaseOfWall view={view} players={players} joinAddress={joinAddress} />
      </main>
      <footer class="wall_foot">
        {view.phase !== "gathering" && view.door_code && (
          <p class="wall_door">
            {joinAddress} · <b>{view.door_code}</b>
          </p>
        )}
        <p class="wall_counts">{countsText(view, answered, players)}</p>
        <ViewMenu keys="D for light or dark" acts={{}} />
      </footer>
    </div>
  );
}

function topText(view: PublicView): string {
  if (view.phase === "stations" && view.stations) return turnTitle(view.stations);
  return view.round > 0 && view.phase !== "finished" ? roundTitle(view) : view.title;
}

function countsText(view: PublicView, answered: number | null, players: number): string {
  if (view.group && (view.phase === "gathering" || view.phase === "explained")) {
    return view.group.paused ? "pause" : `waiting for ${view.group.waited_for} to be ready`;
  }
  if (view.phase === "stations") return view.stations?.over ? "" : `${answered} of ${players} answered`;
  if (view.phase === "answering" && view.benches?.answers) {
    return `${answered} of ${players} answered · ${view.benches.answered} of ${countOf(view.benches.rows.length, "bench", "benches")}`;
  }
  if (
    view.phase === "answering" ||
    view.phase === "answering again" ||
    (view.phase === "closed" && !view.result)
  )
    return answered === null ? `${countOf(players, "player")} here` : `${answered} of ${players} answered`;
  if (view.phase === "talking") return "neighbours talk";
  if (view.result && view.phase !== "finished")
    return `${view.result.answered} of ${view.result.of} answered`;
  return view.phase === "gathering" ? "" : `${players} players`;
}

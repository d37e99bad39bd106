import { ClockFigures, ClockRule } from "../../parts/clock";
import type { PracticeSet } from "../../wire";
import { countWritten, Sheet } from "./sheet";
import { Station } from "./station";
import { onward, paused, stationOf, type Walk, withMoreTime, withoutClock, written } from "./walk";

/** The station one stands at, the clock, and the answer sheet beside or below it. */
export function MockWalk(props: {
  set: PracticeSet;
  walk: Walk;
  setWalk: (next: Walk) => void;
  say: (text: string) => void;
}) {
  const { set, walk, setWalk } = props;
  const station = stationOf(walk) ?? 0;
  const look = set.looks[station];
  if (look === undefined) return null;
  return (
    <div class="mock">
      <div class="mock_here">
        <MockTop walk={walk} station={station} />
        <Station
          look={look}
          number={station + 1}
          draft={walk.sheet[station] ?? { choice: [], typed: [] }}
          onDraft={(draft) => setWalk(written(walk, station, draft))}
          onEnter={() => setWalk(onward(walk))}
          say={props.say}
        />
        <MockBar walk={walk} setWalk={setWalk} />
      </div>
      <aside class="mock_sheet mock_sheet-wide" aria-label="Answer sheet">
        <h2 class="today_heading">Answer sheet</h2>
        <Sheet walk={walk} />
      </aside>
      <details class="mock_sheet mock_sheet-phone">
        <summary>
          Answer sheet: {countWritten(walk)} of {walk.sheet.length} written
        </summary>
        <Sheet walk={walk} />
      </details>
    </div>
  );
}

function MockTop({ walk, station }: { walk: Walk; station: number }) {
  const face =
    walk.leftMs === null
      ? null
      : { limit_ms: walk.stationMs, closes_at: null, left_ms: walk.leftMs, paused: walk.paused };
  return (
    <>
      <ClockRule face={face} left={walk.leftMs} />
      <div class="mock_top">
        <h1>
          Station {station + 1} <span class="mock_of">of {walk.order.length}</span>
        </h1>
        <ClockFigures face={face} left={walk.leftMs} />
      </div>
    </>
  );
}

function MockBar({ walk, setWalk }: { walk: Walk; setWalk: (next: Walk) => void }) {
  const last = walk.at === walk.order.length - 1;
  return (
    <div class="hand_in mock_bar">
      {walk.leftMs !== null && (
        <fieldset class="mock_time" aria-label="Clock">
          <button class="button" type="button" onClick={() => setWalk(paused(walk, !walk.paused))}>
            {walk.paused ? "Go on" : "Pause"}
          </button>
          <button class="button" type="button" onClick={() => setWalk(withMoreTime(walk))}>
            More time
          </button>
          <button class="button" type="button" onClick={() => setWalk(withoutClock(walk))}>
            Clock off
          </button>
        </fieldset>
      )}
      <button class="button button-main hand_in_button" type="button" onClick={() => setWalk(onward(walk))}>
        {last ? "To the sheet" : "Next station"}
      </button>
    </div>
  );
}

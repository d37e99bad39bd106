import { useEffect } from "preact/hooks";
import type { PracticeSet } from "../../wire";
import { countOf } from "../../words/numbers";
import { countWritten, Sheet } from "./sheet";
import { Station } from "./station";
import { type Walk, written } from "./walk";

/** All stations are passed: each line of the sheet may be opened and changed until the sheet is handed in. */
export function MockReview(props: {
  set: PracticeSet;
  walk: Walk;
  setWalk: (next: Walk) => void;
  opened: number | null;
  onOpen: (station: number | null) => void;
  onHandIn: (walk: Walk) => void;
  say: (text: string) => void;
}) {
  const { set, walk, opened, onOpen } = props;
  const look = opened === null ? undefined : set.looks[opened];
  if (opened !== null && look !== undefined) {
    const close = () => onOpen(null);
    return (
      <div class="mock_reopened">
        <Station
          look={look}
          number={opened + 1}
          draft={walk.sheet[opened] ?? { choice: [], typed: [] }}
          onDraft={(draft) => props.setWalk(written(walk, opened, draft))}
          onEnter={close}
          say={props.say}
        />
        <div class="hand_in">
          <p class="hand_in_state">Station {opened + 1}</p>
          <button class="button button-main hand_in_button" type="button" onClick={close}>
            Back to the sheet
          </button>
        </div>
      </div>
    );
  }
  return <WholeSheet walk={walk} onOpen={onOpen} onHandIn={() => props.onHandIn(walk)} />;
}

function WholeSheet(props: { walk: Walk; onOpen: (station: number) => void; onHandIn: () => void }) {
  const { walk } = props;
  const blanks = walk.sheet.length - countWritten(walk);
  useEffect(() => document.getElementById("stem")?.focus({ preventScroll: true }), []);
  return (
    <div class="mock_whole">
      <h1 class="stem" id="stem" tabIndex={-1}>
        Look over your sheet
      </h1>
      <p>
        {blanks === 0 ? "Every line is written." : `${countOf(blanks, "line")} blank.`} Open a line to change
        it. There is no clock here.
      </p>
      <Sheet walk={walk} onOpen={props.onOpen} />
      <div class="hand_in">
        <p class="hand_in_state">
          {countWritten(walk)} of {walk.sheet.length} written
        </p>
        <button class="button button-main hand_in_button" type="button" onClick={props.onHandIn}>
          Hand in the sheet
        </button>
      </div>
    </div>
  );
}

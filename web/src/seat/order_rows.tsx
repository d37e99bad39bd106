import "../parts/rows.css";
import "../parts/buttons.css";
import "./placed_rows.css";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { DifferingText } from "../parts/differing_text";
import { RowLetter } from "../parts/rows";
import type { ItemFace } from "../wire";
import { differingParts, type Stretch } from "../words/differing";
import { type Draft, withMoved } from "./draft";

type Step = -1 | 1;

/** Things to be put in order: each row moves up or down by its buttons, or by the arrow keys on them. */
export function OrderRows(props: {
  item: ItemFace;
  draft: Draft;
  onDraft: (draft: Draft) => void;
  /** Says something aloud. */
  say: (text: string) => void;
}) {
  const { item, draft } = props;
  const list = useRef<HTMLOListElement>(null);
  const [moved, setMoved] = useState<{ letter: string; step: Step } | null>(null);
  useFocusKept(list, moved);
  const parts = partsByLetter(item);
  const move = (letter: string, step: Step) => {
    setMoved({ letter, step });
    const next = withMoved(draft, letter, step);
    props.onDraft(next);
    props.say(`${letter} is at place ${next.choice.indexOf(letter) + 1} of ${next.choice.length}.`);
  };
  return (
    <ol class="rows rows-order" aria-labelledby="stem choose" ref={list}>
      {draft.choice.map((letter, place) => (
        <li key={letter} class="row">
          <RowLetter letter={letter} />
          <div class="row_box order_box">
            <span class="order_place">{place + 1}</span>
            <span class="row_text">
              <DifferingText parts={parts.get(letter) ?? []} />
            </span>
            <Moves letter={letter} place={place} last={draft.choice.length - 1} onMove={move} />
          </div>
        </li>
      ))}
    </ol>
  );
}

function Moves(props: {
  letter: string;
  place: number;
  last: number;
  onMove: (letter: string, step: Step) => void;
}) {
  const { letter, place, last, onMove } = props;
  const byKey = (event: KeyboardEvent) => {
    const step = event.key === "ArrowUp" ? -1 : event.key === "ArrowDown" ? 1 : null;
    if (step === null) return;
    event.preventDefault();
    onMove(letter, step);
  };
  return (
    <span class="order_moves">
      {([-1, 1] as const).map((step) => (
        <button
          key={step}
          class="button order_move"
          type="button"
          data-move={`${letter}${step}`}
          aria-label={`Move ${letter} ${step < 0 ? "up" : "down"}`}
          aria-disabled={place === (step < 0 ? 0 : last)}
          onClick={() => onMove(letter, step)}
          onKeyDown={byKey}
        >
          <span aria-hidden="true">{step < 0 ? "↑" : "↓"}</span>
        </button>
      ))}
    </span>
  );
}

function partsByLetter(item: ItemFace): Map<string, Stretch[]> {
  const parts = differingParts(item.options.map((option) => option.text));
  return new Map(item.options.map((option, index) => [option.letter, parts[index] ?? []]));
}

/** A row that changes its place may lose the focus on the way: it is given back to the same button. */
function useFocusKept(list: { current: HTMLElement | null }, moved: { letter: string; step: Step } | null) {
  useLayoutEffect(() => {
    if (moved === null) return;
    const focused = document.activeElement;
    const inList =
      list.current?.contains(focused) && focused?.getAttribute("data-move")?.[0] === moved.letter;
    if (!inList) {
      list.current?.querySelector<HTMLElement>(`[data-move="${moved.letter}${moved.step}"]`)?.focus();
    }
  }, [list, moved]);
}

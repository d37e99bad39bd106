import "./rows.css";
import "./place_rows.css";
import type { RowResult, SecondShare } from "../wire";
import { percent } from "../words/numbers";
import { breakable } from "../words/word_parts";
import { RowLetter, rowClass } from "./rows";
import { RowTurns } from "./turns";

/** Places of an ordering or rows of a matching after closing: what belongs there, and how many had it right. */
export function PlaceRows(props: {
  rows: readonly RowResult[];
  /** One's own letters, place by place; empty where nobody's answer is shown. */
  chosen: readonly string[];
  /** Second answers, after talking, in the same order. */
  again?: readonly SecondShare[] | undefined;
}) {
  return (
    <ol class="rows rows-places">
      {props.rows.map((row, place) => (
        <li key={place} class={rowClass(true, props.chosen[place] === row.letter, props.again !== undefined)}>
          <RowLetter letter={row.letter} />
          <span class="row_box">
            <OwnWord row={row} chosen={props.chosen[place]} />
            <span class="row_text">
              <PlaceText row={row} place={place} />
            </span>
            {props.again ? <RowTurns first={row} second={props.again[place]} /> : <PlaceShare row={row} />}
          </span>
        </li>
      ))}
    </ol>
  );
}

function PlaceShare({ row }: { row: RowResult }) {
  return (
    <>
      <span class="row_share">
        {percent(row.share)}
        <span class="row_count">
          <span class="unseen">, right for </span> {row.count}
        </span>
      </span>
      <span class="row_bar" aria-hidden="true" style={{ transform: `scaleX(${row.share})` }} />
    </>
  );
}

/** "1 posterior cord", or "brachialis: musculocutaneous nerve". */
export function PlaceText({ row, place }: { row: RowResult; place: number }) {
  return (
    <>
      <span class="place_head">{row.stem ? `${breakable(row.stem)}: ` : `${place + 1} `}</span>
      <b>{breakable(row.text)}</b>
    </>
  );
}

function OwnWord({ row, chosen }: { row: RowResult; chosen: string | undefined }) {
  if (chosen === undefined) return null;
  const right = chosen === row.letter;
  return (
    <span class="row_words">
      <span class="row_word">{right ? "✓ your choice" : `✕ you: ${chosen || "no answer"}`}</span>
    </span>
  );
}

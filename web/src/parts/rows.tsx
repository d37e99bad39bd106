import "./rows.css";
import type { ComponentChildren } from "preact";
import type { OptionFace, OptionResult } from "../wire";
import { differingParts } from "../words/differing";
import { percent } from "../words/numbers";
import { DifferingText } from "./differing_text";

/** The options as read: one column of wide rows, letters in the margin. */
export function PlainRows({ options }: { options: readonly OptionFace[] }) {
  const parts = differingParts(options.map((option) => option.text));
  return (
    <ul class="rows">
      {options.map((option, index) => (
        <li key={option.letter} class="row">
          <RowLetter letter={option.letter} />
          <span class="row_box">
            <span class="row_text">
              <DifferingText parts={parts[index] ?? []} />
            </span>
          </span>
        </li>
      ))}
    </ul>
  );
}

/** The same rows after closing: key, own choice and share each as word, mark and bar in place. */
export function ResultRows(props: {
  options: readonly OptionResult[];
  chosen: readonly string[];
  /** Stands below a row once the record is shown. */
  below?: (option: OptionResult) => ComponentChildren;
}) {
  const parts = differingParts(props.options.map((option) => option.text));
  return (
    <ul class="rows">
      {props.options.map((option, index) => (
        <li key={option.letter} class={rowClass(option.is_key, props.chosen.includes(option.letter))}>
          <RowLetter letter={option.letter} />
          <span class="row_box">
            <RowWords isKey={option.is_key} chosen={props.chosen.includes(option.letter)} />
            <span class="row_text">
              <DifferingText parts={parts[index] ?? []} />
            </span>
            <span class="row_share">
              {percent(option.share)}
              <span class="row_count">
                <span class="unseen">, chosen by </span> {option.count}
              </span>
            </span>
            <span class="row_bar" aria-hidden="true" style={{ transform: `scaleX(${option.share})` }} />
          </span>
          {props.below?.(option)}
        </li>
      ))}
    </ul>
  );
}

export function RowLetter({ letter }: { letter: string }) {
  return <span class="row_letter">{letter}</span>;
}

/** The words on the row's upper line, as on a printed form. */
export function RowWords({ isKey, chosen }: { isKey: boolean; chosen: boolean }) {
  if (!isKey && !chosen) return null;
  return (
    <span class="row_words">
      {chosen && <span class="row_word">{isKey ? "✓" : "✕"} your choice</span>}
      {isKey && <span class="row_word row_word-key">◆ key</span>}
    </span>
  );
}

export function rowClass(isKey: boolean, chosen: boolean): string {
  return `row${isKey ? " row-key" : ""}${chosen ? " row-chosen" : ""}`;
}

import "./rows.css";
import type { ComponentChildren } from "preact";
import type { OptionFace, OptionResult, SecondShare } from "../wire";
import { differingParts } from "../words/differing";
import { percent } from "../words/numbers";
import { DifferingText } from "./differing_text";
import { RowTurns } from "./turns";

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
  /** Second answers, after talking. */
  again?: readonly SecondShare[] | undefined;
  /** What was chosen the second time. */
  chosenAgain?: readonly string[];
  /** Stands below a row once the record is shown. */
  below?: (option: OptionResult) => ComponentChildren;
}) {
  const parts = differingParts(props.options.map((option) => option.text));
  return (
    <ul class="rows">
      {props.options.map((option, index) => (
        <li
          key={option.letter}
          class={rowClass(option.is_key, props.chosen.includes(option.letter), props.again !== undefined)}
        >
          <RowLetter letter={option.letter} />
          <span class="row_box">
            <RowWords
              isKey={option.is_key}
              chosen={props.chosen.includes(option.letter)}
              again={props.chosenAgain?.includes(option.letter) ?? false}
            />
            <span class="row_text">
              <DifferingText parts={parts[index] ?? []} />
            </span>
            {props.again ? (
              <RowTurns first={option} second={props.again.find((one) => one.letter === option.letter)} />
            ) : (
              <RowShare option={option} />
            )}
          </span>
          {props.below?.(option)}
        </li>
      ))}
    </ul>
  );
}

function RowShare({ option }: { option: OptionResult }) {
  return (
    <>
      <span class="row_share">
        {percent(option.share)}
        <span class="row_count">
          <span class="unseen">, chosen by </span> {option.count}
        </span>
      </span>
      <span class="row_bar" aria-hidden="true" style={{ transform: `scaleX(${option.share})` }} />
    </>
  );
}

export function RowLetter({ letter }: { letter: string }) {
  return <span class="row_letter">{letter}</span>;
}

/** The words on the row's upper line, as on a printed form. */
export function RowWords({ isKey, chosen, again }: { isKey: boolean; chosen: boolean; again?: boolean }) {
  if (!isKey && !chosen && !again) return null;
  const mark = isKey ? "✓" : "✕";
  return (
    <span class="row_words">
      {chosen && (
        <span class="row_word">
          {mark} your choice{again && " twice"}
        </span>
      )}
      {again && !chosen && <span class="row_word">{mark} your second</span>}
      {isKey && <span class="row_word row_word-key">◆ key</span>}
    </span>
  );
}

export function rowClass(isKey: boolean, chosen: boolean, twice = false): string {
  return `row${isKey ? " row-key" : ""}${chosen ? " row-chosen" : ""}${twice ? " row-twice" : ""}`;
}

import "../parts/rows.css";
import { DifferingText } from "../parts/differing_text";
import { RowLetter, rowClass } from "../parts/rows";
import { RowTurns } from "../parts/turns";
import type { DeskItem, SecondShare } from "../wire";
import { differingParts } from "../words/differing";
import { percent } from "../words/numbers";
import { sourceWord } from "./family_words";

/** Options with key, reason, source and, once the round is open, how often each was chosen. */
export function DeskRows({ item, again }: { item: DeskItem; again?: readonly SecondShare[] | undefined }) {
  const parts = differingParts(item.options.map((option) => option.text));
  return (
    <ul class={isTight(item) ? "rows rows-desk rows-tight" : "rows rows-desk"}>
      {item.options.map((option, index) => (
        <li key={option.letter} class={rowClass(option.is_key, false, again !== undefined)}>
          <RowLetter letter={option.letter} />
          <div class="row_box">
            <p class="row_text">
              <DifferingText parts={parts[index] ?? []} />
              <span class="row_source">{option.is_key ? "◆ key" : sourceWord(option.source)}</span>
            </p>
            {item.state !== "ahead" && !again && <Share share={option.share} count={option.count} />}
            {again && <RowTurns first={option} second={again.find((one) => one.letter === option.letter)} />}
            <p class="row_reason">{option.reason}</p>
            {item.state !== "ahead" && !again && <Bar share={option.share} />}
          </div>
        </li>
      ))}
    </ul>
  );
}

const MANY = 5;

/** While the round runs all rows stay on one screen: of many, each reason shows its first line. */
export function isTight(item: DeskItem): boolean {
  return item.options.length >= MANY && (item.state === "open" || item.state === "closed");
}

export function Share({ share, count }: { share: number | null; count: number }) {
  return (
    <p class="row_share">
      {share !== null && percent(share)} <span class="row_count">{count}</span>
    </p>
  );
}

export function Bar({ share }: { share: number }) {
  return <span class="row_bar" aria-hidden="true" style={{ transform: `scaleX(${Math.min(1, share)})` }} />;
}

import "./rows.css";
import type { TypedResult } from "../wire";
import { percent } from "../words/numbers";
import { TYPED_MARK, TYPED_WORD } from "../words/verdicts";

/** Typed answers after closing, most frequent first, each with its verdict as word and mark. */
export function TypedRows({ typed }: { typed: readonly TypedResult[] }) {
  return (
    <ul class="rows rows-typed">
      {typed.map((row) => (
        <li
          key={row.text + row.verdict}
          class={row.verdict === "right" ? "row row-typed row-key" : "row row-typed"}
        >
          <span class="row_box">
            <span class="row_words">
              <span class="row_word">
                <span aria-hidden="true">{TYPED_MARK[row.verdict]}</span> {TYPED_WORD[row.verdict]}
              </span>
            </span>
            <span class="row_text">{row.text}</span>
            <span class="row_share">
              {percent(row.share)}
              <span class="row_count">
                <span class="unseen">, written by </span> {row.count}
              </span>
            </span>
            <span
              class="row_bar"
              aria-hidden="true"
              style={{ transform: `scaleX(${Math.min(1, row.share)})` }}
            />
          </span>
        </li>
      ))}
    </ul>
  );
}

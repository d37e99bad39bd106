import "../parts/rows.css";
import type { Draft } from "../line/line";
import type { DeskItem } from "../wire";
import { TYPED_MARK, TYPED_WORD } from "../words/verdicts";
import { Bar, Share } from "./desk_rows";

type Typed = DeskItem["typed"][number];

/** Typed answers as written, with the verdict, why, and the host's own ruling for everybody who wrote them. */
export function DeskTypedRows(props: {
  item: DeskItem;
  answered: number | null;
  onOrder: (draft: Draft) => void;
}) {
  const { item, answered, onOrder } = props;
  const rule = (row: Typed) =>
    onOrder({ type: "rule_on_words", round: item.round, words: row.text, accept: row.verdict !== "right" });
  return (
    <ul class="rows rows-desk">
      {item.typed.map((row) => (
        <li key={row.text} class={row.verdict === "right" ? "row row-typed row-key" : "row row-typed"}>
          <div class="row_box row_box-ruled">
            <p class="row_text">
              {row.text}
              <span class="row_source">
                {TYPED_MARK[row.verdict]} {TYPED_WORD[row.verdict]}
                {row.ruled !== null && ", by your ruling"}
              </span>
            </p>
            <Share share={shareOf(row, answered)} count={row.count} />
            <button class="button row_rule" type="button" onClick={() => rule(row)}>
              {row.verdict === "right" ? "Refuse" : "Accept"}
              <span class="unseen"> {row.text}</span>
            </button>
            <p class="row_reason">{row.because}</p>
            <Bar share={shareOf(row, answered) ?? 0} />
          </div>
        </li>
      ))}
    </ul>
  );
}

function shareOf(row: Typed, answered: number | null): number | null {
  return answered ? row.count / answered : null;
}

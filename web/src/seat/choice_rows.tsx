import "../parts/rows.css";
import "./choice_rows.css";
import { DifferingText } from "../parts/differing_text";
import { RowLetter } from "../parts/rows";
import type { ItemFace } from "../wire";
import { differingParts } from "../words/differing";
import { type Draft, withLetter } from "./draft";

/** Options to choose from: a radio group where one is asked for, boxes to tick where several are. */
export function ChoiceRows(props: { item: ItemFace; draft: Draft; onDraft: (draft: Draft) => void }) {
  const { item, draft } = props;
  const parts = differingParts(item.options.map((option) => option.text));
  const single = item.format === "one_best";
  const full = !single && draft.choice.length >= item.pick;
  return (
    <fieldset class="rows" role={single ? "radiogroup" : "group"} aria-labelledby="stem choose">
      {item.options.map((option, index) => {
        const chosen = draft.choice.includes(option.letter);
        return (
          <label key={option.letter} class={chosen ? "row row-choice row-chosen" : "row row-choice"}>
            <input
              class="row_input"
              type={single ? "radio" : "checkbox"}
              name={`round-${item.round}`}
              value={option.letter}
              checked={chosen}
              disabled={full && !chosen}
              onChange={() => props.onDraft(withLetter(draft, option.letter, item))}
            />
            <RowLetter letter={option.letter} />
            <span class="row_box">
              <span class="row_text">
                <DifferingText parts={parts[index] ?? []} />
              </span>
              <span class="row_tick" aria-hidden="true">
                {chosen ? "✓" : ""}
              </span>
            </span>
          </label>
        );
      })}
    </fieldset>
  );
}

import "./placed_rows.css";
import { PlainRows } from "../parts/rows";
import type { ItemFace } from "../wire";
import { type Draft, withRow } from "./draft";

/** Rows to be matched with the lettered options: one choice of a letter for each. */
export function MatchRows(props: { item: ItemFace; draft: Draft; onDraft: (draft: Draft) => void }) {
  const { item, draft } = props;
  return (
    <div class="match">
      <PlainRows options={item.options} />
      <fieldset class="match_rows" aria-labelledby="stem choose">
        {item.stems.map((stem, place) => (
          <label key={stem} class="match_row">
            <span class="match_stem">{stem}</span>
            <select
              class="field_input match_choice"
              value={draft.choice[place] ?? ""}
              onChange={(event) => props.onDraft(withRow(draft, item, place, event.currentTarget.value))}
            >
              <option value="">–</option>
              {item.options.map((option) => (
                <option key={option.letter} value={option.letter}>
                  {option.letter} {option.text}
                </option>
              ))}
            </select>
          </label>
        ))}
      </fieldset>
    </div>
  );
}

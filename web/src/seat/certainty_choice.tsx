import "../parts/certainty.css";
import { CERTAINTY_TABLE, type Certainty, signed } from "../words/certainty";

/** How certain the player is: three figures with the mark table beside them; may be left alone. */
export function CertaintyChoice(props: {
  chosen: Certainty | null;
  onChoose: (certainty: Certainty) => void;
}) {
  return (
    <fieldset class="certainty">
      <legend class="certainty_ask">How certain are you? It counts beside your marks, for you alone.</legend>
      <div class="certainty_rows">
        {CERTAINTY_TABLE.map(({ certainty, right, wrong, best }) => (
          <label key={certainty} class="certainty_row">
            <input
              type="radio"
              name="certainty"
              value={certainty}
              checked={props.chosen === certainty}
              onChange={() => props.onChoose(certainty)}
            />
            <b class="certainty_figure">{certainty}</b>
            <span>
              right {signed(right)}, wrong {signed(wrong)}
            </span>
            <span class="certainty_best">if {best} sure</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

import "./certainty.css";
import type { SubmitAnswer } from "../wire";

export type Certainty = NonNullable<SubmitAnswer["certainty"]>;

/** The published table (Gardner-Medwin): what a certainty is worth if the answer is right, and if it is wrong. */
export const CERTAINTY_TABLE: readonly {
  certainty: Certainty;
  right: number;
  wrong: number;
  best: string;
}[] = [
  { certainty: 1, right: 1, wrong: 0, best: "below 67 %" },
  { certainty: 2, right: 2, wrong: -2, best: "67 to 80 %" },
  { certainty: 3, right: 3, wrong: -6, best: "above 80 %" },
];

/** Figures with a real minus sign. */
export function signed(mark: number): string {
  return mark < 0 ? `−${-mark}` : `${mark}`;
}

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

import "../parts/rows.css";
import "../parts/place_rows.css";
import { DifferingText } from "../parts/differing_text";
import { RowLetter, RowWords, rowClass } from "../parts/rows";
import type { Solution } from "../wire";
import { differingParts } from "../words/differing";
import { breakable } from "../words/word_parts";

/** The options or rows of a look with the key, one's own choice, and why each is right or wrong. */
export function SolutionRows({ solution, chosen }: { solution: Solution; chosen: readonly string[] }) {
  if (solution.rows.length > 0) return <Places solution={solution} chosen={chosen} />;
  if (solution.options.length === 0) return null;
  const parts = differingParts(solution.options.map((option) => option.text));
  return (
    <ul class="rows rows-solution">
      {solution.options.map((option, index) => {
        const mine = chosen.includes(option.letter);
        return (
          <li key={option.letter} class={rowClass(option.is_key, mine)}>
            <RowLetter letter={option.letter} />
            <span class="row_box">
              <RowWords isKey={option.is_key} chosen={mine} />
              <span class="row_text">
                <DifferingText parts={parts[index] ?? []} />
              </span>
            </span>
            {option.reason && <p class="row_below">{option.reason}</p>}
          </li>
        );
      })}
    </ul>
  );
}

function Places({ solution, chosen }: { solution: Solution; chosen: readonly string[] }) {
  return (
    <ol class="rows rows-solution rows-places">
      {solution.rows.map((row, place) => {
        const own = chosen[place];
        return (
          <li key={place} class={rowClass(true, own === row.letter)}>
            <RowLetter letter={row.letter} />
            <span class="row_box">
              <span class="row_words">
                <span class="row_word">
                  {own === row.letter ? "✓ your choice" : `✕ you: ${own || "no answer"}`}
                </span>
              </span>
              <span class="row_text">
                <span class="place_head">{row.stem ? `${breakable(row.stem)}: ` : `${place + 1} `}</span>
                <b>{breakable(row.text)}</b>
              </span>
            </span>
            {row.reason && <p class="row_below">{row.reason}</p>}
          </li>
        );
      })}
    </ol>
  );
}

import "../parts/rows.css";
import { DifferingText } from "../parts/differing_text";
import { RowLetter } from "../parts/rows";
import type { AnswerFace, ItemFace } from "../wire";
import { differingParts } from "../words/differing";
import { answerTexts } from "./history";

/** What the player handed in, without a word on whether it is right. */
export function OwnAnswer({ item, answer }: { item: ItemFace; answer: AnswerFace }) {
  if (item.format === "one_best" || item.format === "pick_n") {
    return <ChosenRows item={item} choice={answer.choice} />;
  }
  return (
    <ol class={item.format === "ordering" ? "own_answer own_answer-order" : "own_answer"}>
      {[...answerTexts(item, answer.choice), ...answer.typed].map((text, place) => (
        <li key={place}>{text}</li>
      ))}
    </ol>
  );
}

/** All options in their rows, so that nothing jumps; the chosen ones carry the tick they had. */
function ChosenRows({ item, choice }: { item: ItemFace; choice: readonly string[] }) {
  const parts = differingParts(item.options.map((option) => option.text));
  return (
    <ul class="rows">
      {item.options.map((option, index) => {
        const chosen = choice.includes(option.letter);
        return (
          <li key={option.letter} class={chosen ? "row row-chosen" : "row"}>
            <RowLetter letter={option.letter} />
            <span class="row_box">
              <span class="row_text">
                <DifferingText parts={parts[index] ?? []} />
                {chosen && <span class="unseen">, your choice</span>}
              </span>
              <span class="row_tick" aria-hidden="true">
                {chosen ? "✓" : ""}
              </span>
            </span>
          </li>
        );
      })}
    </ul>
  );
}

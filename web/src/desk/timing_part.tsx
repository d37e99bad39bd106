import { useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import { Tick } from "../parts/tick";
import { TimingField, timingFault } from "../parts/timing_field";
import type { ReviewLine } from "../wire";
import type { PartProps } from "./review_dialog";

/** What may be chosen anew as long as the door is shut. */
export function TimingPart({
  review,
  options,
  onDo,
}: PartProps & { options: NonNullable<ReviewLine["options"]> }) {
  const [chosen, setChosen] = useState(options);
  const [fault, setFault] = useState("");
  const change = (event: Event) => {
    event.preventDefault();
    const wrong = timingFault(chosen);
    setFault(wrong);
    if (wrong === "") onDo({ type: "change_review", room: review.room, ...chosen }, "The timing is changed.");
  };
  return (
    <details class="review_more">
      <summary>Timing and certainty</summary>
      <form class="review_part" onSubmit={change} noValidate>
        <TimingField
          value={chosen}
          onTiming={(timing) => setChosen({ ...chosen, ...timing })}
          unlimited="you close each round"
          choiceClass="choice"
          lineClass="choice_line"
          numberClass="choice_number"
        />
        <Tick
          line="choice_line"
          checked={chosen.certainty}
          onTick={(certainty) => setChosen({ ...chosen, certainty })}
        >
          players say how certain they are
        </Tick>
        <Tick
          line="choice_line"
          checked={chosen.players_take_time}
          onTick={(players_take_time) => setChosen({ ...chosen, players_take_time })}
        >
          while results are held, players may take more time themselves
        </Tick>
        <Complaint text={fault} />
        <div>
          <button class="button" type="submit">
            Change it
          </button>
        </div>
      </form>
    </details>
  );
}

import { useState } from "preact/hooks";
import { Tick } from "../parts/tick";
import { fieldOf, momentOf, zoneHere } from "./planned_time";
import type { PartProps } from "./review_dialog";

/** The day and time for which a review is planned, and whether its door opens by itself then. */
export function SchedulePart({ review, onDo }: PartProps) {
  const [field, setField] = useState(fieldOf(review.planned_at));
  const [opensItself, setOpensItself] = useState(review.opens_itself === true);
  const at = momentOf(field);
  const schedule = (event: Event) => {
    event.preventDefault();
    const { room } = review;
    onDo({ type: "schedule_review", room, at, opens_itself: opensItself }, "It is planned.");
  };
  const takeBack = () =>
    onDo({ type: "schedule_review", room: review.room, at: null }, "No day is planned for it.");
  return (
    <form class="review_part" onSubmit={schedule}>
      <label class="field">
        <span class="field_label">Planned for</span>
        <span class="field_hint">In the time of this device ({zoneHere()}).</span>
        <input
          class="field_input"
          type="datetime-local"
          value={field}
          onInput={(event) => setField(event.currentTarget.value)}
        />
      </label>
      <Tick line="choice_line" checked={opensItself} onTick={setOpensItself}>
        the door opens by itself at that time
      </Tick>
      <div class="dialog_buttons">
        <button class="button" type="submit" disabled={at === null}>
          Plan it
        </button>
        {typeof review.planned_at === "number" && (
          <button class="button" type="button" onClick={takeBack}>
            Plan it for no day
          </button>
        )}
      </div>
    </form>
  );
}

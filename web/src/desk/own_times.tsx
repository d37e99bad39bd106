import "./own_time.css";
import { useEffect, useRef } from "preact/hooks";
import type { ServerClock } from "../line/server_clock";
import { useLeft } from "../parts/left";
import type { DeskView } from "../wire";
import { countOf, secondsText, secondsWords } from "../words/numbers";
import { stillTime } from "./still_time";

interface AtDesk {
  view: DeskView;
  clock: ServerClock;
}

/** Beside the counts: that somebody may still answer, and how long. Only the desk shows this. */
export function OwnTimes({ view, clock }: AtDesk) {
  const { many, left } = useStillTime({ view, clock });
  if (many === 0) return null;
  return (
    <span class="own_times" role="timer">
      <span class="unseen">{`${countOf(many, "player")} may still answer: ${secondsWords(left)} left`}</span>
      <span aria-hidden="true">
        {many} may still answer <b>{secondsText(left)}</b>
        {left <= 59_000 && " s"}
      </span>
    </span>
  );
}

/** Asks once more before a step that ends somebody's time. */
export function OwnTimeDialog(
  props: AtDesk & {
    /** What the step is called on its button. */
    step: string;
    onGo: () => void;
    onWait: () => void;
  },
) {
  const { many, left } = useStillTime(props);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog class="dialog" ref={dialog} onClose={props.onWait} aria-labelledby="own-time-heading">
      <div class="dialog_form">
        <h2 id="own-time-heading" class="dialog_heading">
          {many > 0 ? "Somebody still has time" : "Nobody is waiting any more"}
        </h2>
        <p>
          {many > 0
            ? `${countOf(many, "player")} with more time may still answer for ${secondsWords(left)}. "${props.step}" ends that.`
            : "All who had more time have answered, or their time is over."}
        </p>
        <div class="dialog_buttons">
          <button class="button button-main" type="button" onClick={many > 0 ? props.onWait : props.onGo}>
            {many > 0 ? "Wait" : props.step}
          </button>
          <button class="button" type="button" onClick={many > 0 ? props.onGo : props.onWait}>
            {many > 0 ? `${props.step} now` : "Leave it"}
          </button>
        </div>
      </div>
    </dialog>
  );
}

/** How many may still answer, and the time of the one who has longest, counted down. */
function useStillTime({ view, clock }: AtDesk): { many: number; left: number } {
  const still = stillTime(view, clock.now());
  const left = useLeft(still[0]?.row.clock ?? null, clock) ?? 0;
  return { many: left > 0 ? still.length : 0, left };
}

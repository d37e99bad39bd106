import { useEffect, useRef } from "preact/hooks";
import { countOf } from "../words/numbers";

/** Asks once more before the review ends: it cannot be opened again. */
export function EndDialog({
  ahead,
  still,
  onEnd,
  onStay,
}: {
  ahead: number;
  /** How many have time of their own left. */
  still: number;
  onEnd: () => void;
  onStay: () => void;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog class="dialog" ref={dialog} onClose={onStay} aria-labelledby="end-heading">
      <div class="dialog_form">
        <h2 id="end-heading" class="dialog_heading">
          End the review?
        </h2>
        <p>
          {still > 0 ? `${countOf(still, "player")} with more time may still answer. ` : ""}
          {ahead > 0 ? `${countOf(ahead, "item")} ahead will not be asked. ` : ""}
          Everybody then sees the total. It cannot be opened again.
        </p>
        <div class="dialog_buttons">
          <button class="button button-main" type="button" onClick={onEnd}>
            End it
          </button>
          <button class="button" type="button" onClick={onStay}>
            Go on
          </button>
        </div>
      </div>
    </dialog>
  );
}

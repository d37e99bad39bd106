import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import { Complaint } from "../parts/notice";
import type { ReviewLine } from "../wire";
import { DeletePart } from "./delete_part";
import { isInClass } from "./review_order";
import { SchedulePart } from "./schedule_part";
import { TimingPart } from "./timing_part";

export interface PartProps {
  review: ReviewLine;
  /** Carries an order out, and says what was done once it is. */
  onDo: (draft: Draft, done: string) => void;
}

/** One review as a thing: its title, its day, its timing, copies of it, the archive, and its end. */
export function ReviewDialog(props: {
  review: ReviewLine;
  onChange: (draft: Draft) => Promise<string>;
  /** Closes; with what was done, or nothing. */
  onDone: (done: string) => void;
}) {
  const { review, onChange, onDone } = props;
  const [complaint, setComplaint] = useState("");
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const carryOut = async (draft: Draft, done: string) => {
    const fault = await onChange(draft);
    setComplaint(fault);
    if (fault === "") onDone(done);
  };
  const part: PartProps = { review, onDo: (draft, done) => void carryOut(draft, done) };
  return (
    <dialog class="dialog" ref={dialog} onClose={() => onDone("")} aria-labelledby="review-heading">
      <div class="dialog_form">
        <h2 id="review-heading" class="dialog_heading">
          {review.title || "Untitled"}
        </h2>
        <Complaint text={complaint} />
        <TitlePart {...part} />
        {review.phase === "preparing" && <SchedulePart {...part} />}
        {review.options && <TimingPart {...part} options={review.options} />}
        <CopyPart {...part} />
        {isInClass(review) ? (
          <p class="choice_note">A class is in it. Once it has ended you can archive or delete it.</p>
        ) : (
          <DeletePart {...part} />
        )}
        <button class="button review_close" type="button" onClick={() => onDone("")}>
          Close
        </button>
      </div>
    </dialog>
  );
}

function TitlePart({ review, onDo }: PartProps) {
  const [title, setTitle] = useState(review.title);
  const rename = (event: Event) => {
    event.preventDefault();
    onDo({ type: "rename_review", room: review.room, title }, `It is called “${title.trim()}” now.`);
  };
  return (
    <form class="review_part" onSubmit={rename}>
      <label class="field">
        <span class="field_label">Title</span>
        <input
          class="field_input"
          value={title}
          maxLength={120}
          required
          onInput={(event) => setTitle(event.currentTarget.value)}
        />
      </label>
      <button class="button" type="submit" disabled={title.trim() === "" || title === review.title}>
        Rename
      </button>
    </form>
  );
}

function CopyPart({ review, onDo }: PartProps) {
  const copy = (dealt: "same" | "anew") =>
    onDo({ type: "copy_review", room: review.room, dealt }, "The copy stands in the list.");
  return (
    <fieldset class="review_part">
      <legend class="field_label">A copy, to be run again</legend>
      <div class="dialog_buttons">
        <button class="button" type="button" onClick={() => copy("same")}>
          With the same items
        </button>
        <button class="button" type="button" onClick={() => copy("anew")}>
          Dealt anew
        </button>
      </div>
    </fieldset>
  );
}

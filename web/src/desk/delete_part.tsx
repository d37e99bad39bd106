import { useEffect, useRef, useState } from "preact/hooks";
import type { PartProps } from "./review_dialog";

/** Putting a review away, or erasing it after being asked once more. */
export function DeletePart({ review, onDo }: PartProps) {
  const [sure, setSure] = useState(false);
  const { room } = review;
  if (sure) return <Sure review={review} onDo={onDo} onKeep={() => setSure(false)} />;
  const step = review.archived
    ? {
        type: "unarchive_review" as const,
        text: "Take it out of the archive",
        done: "It is back in the list.",
      }
    : { type: "archive_review" as const, text: "Archive", done: ARCHIVED };
  return (
    <div class="dialog_buttons">
      <button class="button" type="button" onClick={() => onDo({ type: step.type, room }, step.done)}>
        {step.text}
      </button>
      <button class="button" type="button" onClick={() => setSure(true)}>
        Delete …
      </button>
    </div>
  );
}

const ARCHIVED = "It is in the archive; choose the state “archived” to see it.";

function Sure({ review, onDo, onKeep }: PartProps & { onKeep: () => void }) {
  const keep = useRef<HTMLButtonElement>(null);
  useEffect(() => keep.current?.focus(), []); // which also brings the question into view
  const done = `“${review.title}” is deleted.`;
  return (
    <div class="review_part review_sure" role="alert">
      <p>
        All of it is erased: items, answers, marks and report, also from the files of this server. Players
        lose it from their second look. Nothing brings it back but a backup.
      </p>
      <div class="dialog_buttons">
        <button
          class="button button-main"
          type="button"
          onClick={() => onDo({ type: "delete_review", room: review.room }, done)}
        >
          Delete it for good
        </button>
        <button class="button" type="button" ref={keep} onClick={onKeep}>
          Keep it
        </button>
      </div>
    </div>
  );
}

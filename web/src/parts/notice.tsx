import "./notice.css";
import type { LineState } from "../line/line";

/** Says above everything else that the line is down, and what that means for the reader. */
export function LineNotice({ state, kept }: { state: LineState; kept: string }) {
  if (state !== "lost") return null;
  return (
    <p class="notice">
      <span class="notice_mark" aria-hidden="true">
        ↻
      </span>
      Connection lost, trying again. {kept}
    </p>
  );
}

/** What the server refused or could not do, in its own sentence; the live region says it too. */
export function Complaint({ text }: { text: string }) {
  if (text === "") return null;
  return (
    <p class="complaint">
      <span class="notice_mark" aria-hidden="true">
        !
      </span>
      {text}
    </p>
  );
}

import type { ComponentChildren } from "preact";
import { Complaint } from "../parts/notice";
import type { Fetched } from "./api";

/** What was fetched, or why it is not there and what to do. */
export function Loaded<T>(props: {
  fetched: Fetched<T> | null;
  onAgain: () => void;
  children: (value: T) => ComponentChildren;
}) {
  const { fetched } = props;
  if (fetched === null) return <p class="waiting">One moment …</p>;
  if (fetched.kind === "fresh" || fetched.kind === "kept") return <>{props.children(fetched.value)}</>;
  return (
    <div class="mine_missing">
      <h1 class="stem" id="stem" tabIndex={-1}>
        {fetched.kind === "no line" ? "No line to the server" : "This could not be shown"}
      </h1>
      <Complaint
        text={
          fetched.kind === "problem"
            ? fetched.text
            : "This was not opened on this device before, so nothing of it is kept here. Come back when there is a line."
        }
      />
      <p class="today_act">
        <button class="button" type="button" onClick={props.onAgain}>
          Try again
        </button>
        <a class="button" href="#/">
          Today's page
        </a>
      </p>
    </div>
  );
}

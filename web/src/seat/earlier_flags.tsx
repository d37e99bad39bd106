import "./flag.css";
import { useState } from "preact/hooks";
import { complaintOf } from "../line/complaint";
import type { Draft, Line } from "../line/line";
import type { OwnFlag } from "../wire";

/** What this seat flagged in other rounds of the review, each to be taken back. */
export function EarlierFlags(props: { flags: readonly OwnFlag[]; line: Line; say: (text: string) => void }) {
  const [complaint, setComplaint] = useState("");
  if (props.flags.length === 0) return null;
  const order = async (draft: Draft, done: string) => {
    const reply = await props.line.say(draft);
    const fault = complaintOf(reply);
    setComplaint(fault);
    props.say(fault || done);
  };
  return (
    <section class="flags_earlier" aria-label="Your flags of other rounds">
      <p>Flagged in other rounds:</p>
      <ul class="flags_earlier_list">
        {props.flags.map(({ round, text }) => (
          <li key={round}>
            <span>
              <span aria-hidden="true">⚑ </span>round {round}
              {text && `: “${text}”`}
            </span>
            <button
              class="button"
              type="button"
              aria-label={`Take back the flag of round ${round}`}
              onClick={() => void order({ type: "unflag_item", round }, "The flag is taken back.")}
            >
              Take back
            </button>
          </li>
        ))}
      </ul>
      {complaint && <p role="alert">{complaint}</p>}
    </section>
  );
}

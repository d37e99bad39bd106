import "./claim_panel.css";
import { useState } from "preact/hooks";
import { complaintOf } from "../line/complaint";
import type { Line } from "../line/line";
import { Complaint } from "../parts/notice";
import type { OwnClaim } from "../wire";

export const MOST_TRIES = 5;

interface ClaimProps {
  claim: OwnClaim;
  line: Line;
  say: (text: string) => void;
}

/** In a review for credit: say by institutional id who sits here, or see that it is known. */
export function ClaimPanel({ claim, line, say }: ClaimProps) {
  if (claim.claimed) {
    return (
      <section class="claim" aria-label="For credit">
        <p>
          <span aria-hidden="true">✓</span> You are on the class roster: your marks here are for credit.
          Nobody in the room sees who you are; your host does.
        </p>
      </section>
    );
  }
  if (claim.tries_left === 0) {
    return (
      <section class="claim" aria-label="For credit">
        <p>
          That was too many wrong ids. Ask your instructor to put this seat on the roster; your answers are
          kept.
        </p>
      </section>
    );
  }
  return <ClaimForm claim={claim} line={line} say={say} />;
}

function ClaimForm({ claim, line, say }: ClaimProps) {
  const [typed, setTyped] = useState("");
  const [busy, setBusy] = useState(false);
  const [complaint, setComplaint] = useState("");
  const hand = async (event: Event) => {
    event.preventDefault();
    const id = typed.trim();
    if (id === "") return setComplaint("Type your id first.");
    setBusy(true);
    const reply = await line.say({ type: "claim_identity", institutional_id: id });
    setBusy(false);
    const text = complaintOf(reply);
    setComplaint(text);
    say(text || "You are on the class roster.");
  };
  return (
    <form class="claim" onSubmit={hand} noValidate aria-label="For credit">
      <label class="field">
        <span class="field_label">For credit: your institutional id</span>
        <input
          class="field_input"
          value={typed}
          maxLength={100}
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          aria-describedby="claim_hint"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p class="claim_hint" id="claim_hint">
        As it stands on your card. Nobody in the room sees it; your host sees your name beside your marks.{" "}
        <a href="/privacy">What is stored</a>
      </p>
      <Complaint text={complaint} />
      {claim.tries_left < MOST_TRIES && (
        <p class="claim_hint">
          {claim.tries_left === 1 ? "1 try is left." : `${claim.tries_left} tries are left.`}
        </p>
      )}
      <button class="button" type="submit" disabled={busy}>
        This is me
      </button>
    </form>
  );
}

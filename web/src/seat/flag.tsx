import "./flag.css";
import "../parts/buttons.css";
import { useEffect, useState } from "preact/hooks";
import { complaintOf } from "../line/complaint";
import type { Draft, Line } from "../line/line";
import type { OwnView, PublicView } from "../wire";

/** The flag of this seat for the current round, and whether its words are being written. */
export interface FlagAtSeat {
  up: boolean;
  text: string;
  open: boolean;
  complaint: string;
  /** One tap puts the flag up; later taps open and close what can be done about it. */
  tap(): void;
  write(text: string): void;
  takeBack(): void;
}

const NOTE = "Flagged: your host sees that somebody did, not who. Nobody else sees it.";
const HINT = "If an answer looks wrong, flag it.";

/** The flag of the current round; null where nothing can be flagged: before the own first round, after the last, and where no host would read it. */
export function useFlag(
  line: Line,
  view: PublicView,
  own: OwnView | null,
  say: (text: string) => void,
): FlagAtSeat | null {
  const flag = useFlagOf({ round: view.round, own, line, say });
  return canFlag(view, own) ? flag : null;
}

/** The flag of one round of the review, the current one or one before. */
export function useFlagOf(props: {
  round: number;
  own: OwnView | null;
  line: Line;
  say: (text: string) => void;
}): FlagAtSeat {
  const { round, own, line, say } = props;
  const [open, setOpen] = useState(false);
  const [complaint, setComplaint] = useState("");
  useEffect(() => setOpen(false), [round]);
  const order = async (draft: Draft, done: string, staysOpen: boolean) => {
    const reply = await line.say(draft);
    const fault = complaintOf(reply);
    setComplaint(fault);
    setOpen(staysOpen || fault !== "");
    say(fault || done);
  };
  const mine = own?.flags.find((one) => one.round === round) ?? null;
  const put = (text: string, staysOpen: boolean) =>
    void order({ type: "flag_item", round, text }, "Flagged for your host.", staysOpen);
  return {
    up: mine !== null,
    text: mine?.text ?? "",
    open,
    complaint,
    tap: () => (mine ? setOpen(!open) : put("", true)),
    write: (text) => put(text, false),
    takeBack: () => void order({ type: "unflag_item", round }, "The flag is taken back.", false),
  };
}

function canFlag(view: PublicView, own: OwnView | null): boolean {
  if (view.group || own === null || view.phase === "stations" || view.phase === "finished") return false;
  return view.round >= Math.max(1, own.from_round);
}

/** One tap flags; `about` tells a screen reader what, where several flags stand on one page. */
export function FlagButton({ flag, about }: { flag: FlagAtSeat; about?: string }) {
  return (
    <button
      class="button flag_button"
      type="button"
      title={HINT}
      aria-pressed={flag.up}
      aria-expanded={flag.open}
      onClick={flag.tap}
    >
      <span aria-hidden="true">⚑</span> {flag.up ? "Flagged" : "Flag"}
      {about && <span class="unseen"> {about}</span>}
    </button>
  );
}

/** A few words to the flag, or taking it back. */
export function FlagWords({ flag, note = NOTE }: { flag: FlagAtSeat; note?: string }) {
  const [text, setText] = useState(flag.text);
  return (
    <form
      class="flag"
      onSubmit={(event) => {
        event.preventDefault();
        flag.write(text);
      }}
    >
      <p role="status">{flag.complaint || note}</p>
      <label class="field">
        <span class="field_label">What looks wrong? (may stay empty)</span>
        <input
          class="field_input"
          value={text}
          maxLength={200}
          onInput={(event) => setText(event.currentTarget.value)}
        />
      </label>
      <div class="flag_buttons">
        <button class="button" type="submit">
          Send
        </button>
        <button class="button" type="button" onClick={flag.takeBack}>
          Take the flag back
        </button>
      </div>
    </form>
  );
}

import "./kept_panel.css";
import { useState } from "preact/hooks";
import { complaintOf } from "../line/complaint";
import type { Line } from "../line/line";
import { ownKey, setKeepsResults } from "../line/own_key";
import { Complaint } from "../parts/notice";
import type { OwnView } from "../wire";

interface KeptPanelProps {
  own: OwnView;
  line: Line;
  say: (text: string) => void;
}

/** In the seat: whether the results of this review are kept, where they are found, and how to refuse. */
export function KeptPanel({ own, line, say }: KeptPanelProps) {
  const [busy, setBusy] = useState(false);
  const [complaint, setComplaint] = useState("");
  const decide = async (keep: boolean) => {
    setBusy(true);
    setKeepsResults(keep);
    const reply = await line.say({ type: "keep_results", player_key: keep ? ownKey() : "" });
    setBusy(false);
    setComplaint(complaintOf(reply));
    if (reply.result === "done") say(keep ? "Your results are kept." : "Your results are not kept.");
  };
  return (
    <section class="kept" aria-label="Your results">
      <p>
        {own.kept
          ? `Your results are kept for a second look, under an anonymous key that this browser has. ${own.group ? "The others in this room see" : "Your host sees"} your handle, not the key.`
          : "Your results are not kept for a second look. In this review they stay beside your handle."}
      </p>
      <p class="kept_ways">
        {own.kept && (
          <a class="button" href="/mine">
            Second look
          </a>
        )}
        <button class="button" type="button" disabled={busy} onClick={() => void decide(!own.kept)}>
          {own.kept ? "Do not keep them" : "Keep them"}
        </button>
        <a class="kept_more" href="/privacy">
          What is stored, and how long
        </a>
      </p>
      <Complaint text={complaint} />
    </section>
  );
}

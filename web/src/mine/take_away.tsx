import { useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import { NO_LINE } from "./plan_form";
import type { MineSession } from "./session";

const CALENDAR = "/mine/api/calendar";

/** A study sheet to print, and the plan as a calendar. */
export function TakeAway({ session, say }: { session: MineSession; say: (text: string) => void }) {
  const [complaint, setComplaint] = useState("");
  const [feed, setFeed] = useState<string | null>(null);
  const hear = (reply: { kind: string; text?: string }, done: string) => {
    const refusal = reply.kind === "problem" ? (reply.text ?? "") : reply.kind === "no line" ? NO_LINE : "";
    setComplaint(refusal);
    say(refusal || done);
  };
  const sheet = async (paper: "a4" | "letter") => {
    const reply = await session.api.file(`/mine/api/sheet.pdf?paper=${paper}`);
    hear(reply, "The study sheet is saved.");
    if (reply.kind === "fresh") saveFile(reply.value, `study-sheet-${paper}.pdf`);
  };
  const subscribe = async () => {
    const reply = await session.api.send<{ address: string }>("POST", CALENDAR);
    hear(reply, "The calendar's address is made.");
    if (reply.kind === "fresh") setFeed(reply.value.address);
  };
  const revoke = async () => {
    const reply = await session.api.send("DELETE", CALENDAR);
    hear(reply, "The calendar's address is void.");
    if (reply.kind === "fresh") setFeed(null);
  };
  return (
    <section>
      <h2 class="today_heading">Take it with you</h2>
      <p>Records of missed items as a sheet: blanks to fill in on one side, answers on the other.</p>
      <p class="today_act">
        <button class="button" type="button" onClick={() => void sheet("a4")}>
          Sheet, A4
        </button>
        <button class="button" type="button" onClick={() => void sheet("letter")}>
          Sheet, Letter
        </button>
      </p>
      <p>The plan in your calendar: a secret address without marks or names, which you can make void.</p>
      <p class="today_act">
        <button class="button" type="button" onClick={() => void subscribe()}>
          {feed === null ? "Make the address" : "Make a new address"}
        </button>
        <button class="button" type="button" onClick={() => void revoke()}>
          Make it void
        </button>
      </p>
      {feed !== null && (
        <div class="field">
          <label class="field_label" for="feed">
            Address for your calendar program
          </label>
          <input
            id="feed"
            class="field_input"
            readOnly
            value={feed}
            onFocus={(event) => event.currentTarget.select()}
          />
        </div>
      )}
      <Complaint text={complaint} />
    </section>
  );
}

/** Hands a file to the browser to be saved. */
function saveFile(content: Blob, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

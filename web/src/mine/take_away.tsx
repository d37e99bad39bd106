import { useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import type { Fetched } from "./api";
import { CalendarFeed } from "./calendar_feed";
import { NO_LINE } from "./plan_form";
import { saveFile } from "./save_file";
import type { MineSession } from "./session";

/** A study sheet to print, and the plan as a calendar. */
export function TakeAway({ session, say }: { session: MineSession; say: (text: string) => void }) {
  const [complaint, setComplaint] = useState("");
  const sheet = async (paper: "a4" | "letter") => {
    const reply = await session.api.file(`/mine/api/sheet.pdf?paper=${paper}`);
    setComplaint(refusalOf(reply));
    say(refusalOf(reply) || "The study sheet is saved.");
    if (reply.kind === "fresh") saveFile(reply.value, `study-sheet-${paper}.pdf`);
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
      <Complaint text={complaint} />
      <CalendarFeed session={session} say={say} />
    </section>
  );
}

/** Why it came to nothing, in a sentence; "" if it did not. */
export function refusalOf(reply: Fetched<unknown>): string {
  if (reply.kind === "problem") return reply.text;
  return reply.kind === "no line" ? NO_LINE : "";
}

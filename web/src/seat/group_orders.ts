import { useState } from "preact/hooks";
import type { Draft, Line } from "../line/line";
import { sayUntilAnswered } from "../line/persist";

/** An order that this player has given and that has not been answered yet, and the last complaint. */
export interface Orders {
  waiting: boolean;
  complaint: string;
  give(draft: Draft): Promise<boolean>;
}

/** Gives orders over a line that may fail: each is said again until it is answered. */
export function useOrders(line: Line): Orders {
  const [waiting, setWaiting] = useState(false);
  const [complaint, setComplaint] = useState("");
  return {
    waiting,
    complaint,
    async give(draft) {
      setWaiting(true);
      const reply = await sayUntilAnswered(line, draft);
      setWaiting(false);
      // what came too late for its moment needs no word: the page shows the next one
      const said = reply.result === "done" || reply.code === "wrong_phase" ? "" : (reply.text ?? "");
      setComplaint(said);
      return reply.result === "done";
    },
  };
}

import type { Reply } from "../wire";

/** What the server refused or could not do, in its own sentence; "" if it was done. */
export function complaintOf(reply: Reply): string {
  return reply.result === "done" ? "" : (reply.text ?? "");
}

import type { Reply } from "../wire";
import type { Draft, Line } from "./line";
import { newMessageId } from "./random";

const AGAIN_MS = 1500;
const MOST_TRIES = 20;

/** Failures pass, and so does a crowd at the door: the same message goes again. */
export function mustRepeat(reply: Reply): boolean {
  return reply.result === "failed" || reply.code === "slow_down";
}

/** Says a message, with the same id again as long as nothing comes back; the last reply when patience ends. */
export async function sayUntilAnswered(line: Line, draft: Draft): Promise<Reply> {
  const message = { ...draft, id: newMessageId() } as Parameters<Line["sayAgain"]>[0];
  let reply = await line.sayAgain(message);
  for (let tries = 1; tries < MOST_TRIES && mustRepeat(reply); tries += 1) {
    await new Promise((go) => window.setTimeout(go, AGAIN_MS));
    reply = await line.sayAgain(message);
  }
  return reply;
}

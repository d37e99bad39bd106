import { complaintOf } from "../line/complaint";
import type { Line } from "../line/line";
import type { ClockFace, OwnView, PublicView, Reply } from "../wire";

/** When the offer is made once more, so that 20 s are left to take it after it was read out (WCAG 2.2, 2.2.1). */
export const OFFERED_AGAIN_MS = 30_000;

/** What this player may take in the round on show. */
export interface ToTake {
  round: number;
  again: boolean;
  /** How often they have taken it for what is asked now. */
  taken: number;
  /** How often it may be taken. */
  most: number;
  always: boolean;
  /** A clock up to the moment when it is too late, where the round has closed; null while it is open. */
  late: ClockFace | null;
}

/** Null where nothing can be taken now: no limit, no held results, not a round of this player. */
export function toTake(view: PublicView, own: OwnView | null): ToTake | null {
  const mine = own?.time_to_take;
  if (!view.offers_time || !own || !mine || view.result !== null || own.from_round > view.round) return null;
  const fresh = own.round === view.round;
  const taken = { round: view.round, most: mine.most, always: mine.always };
  if (view.phase === "answering" || view.phase === "answering again") {
    const again = view.phase === "answering again";
    const same = fresh && own.clock_again === again;
    const timed = view.clock !== null && view.clock.limit_ms !== null;
    return timed ? { ...taken, again, taken: same ? mine.taken : 0, late: null } : null;
  }
  if (view.phase !== "closed" || !fresh || mine.until === null) return null;
  const late = { limit_ms: null, closes_at: mine.until, left_ms: null, paused: false };
  return { ...taken, again: own.clock_again, taken: mine.taken, late };
}

/** Takes more time once; the server's sentence why not, or "". What was added is said with the clock. */
export async function takeTime(line: Line, wish: ToTake): Promise<string> {
  const { round, again, taken } = wish;
  return faultOf(await line.say({ type: "take_time", round, time: taken + 1, ...(again && { again }) }));
}

/** Takes it in every round of this review from now on, or not any more; the sentence why not, or "". */
export async function takeAlways(line: Line, on: boolean): Promise<string> {
  return faultOf(await line.say({ type: "take_time_always", on }));
}

/** Whether the offer is to be made once more between two looks at the clock. */
export function isOfferedAgain(leftBefore: number, leftNow: number): boolean {
  return leftNow <= OFFERED_AGAIN_MS && OFFERED_AGAIN_MS < leftBefore;
}

function faultOf(reply: Reply): string {
  return complaintOf(reply);
}

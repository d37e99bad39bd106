import { secondsWords } from "./numbers";

/** Something to be said aloud when so much time is left. */
export interface ClockCall {
  leftMs: number;
  text: string;
}

const LAST_CALL_MS = 10_000;
const APART_MS = 5_000;

/** The calls of a round: half and a quarter of its time, and ten seconds; none too close to the next. */
export function clockCalls(limitMs: number): ClockCall[] {
  const shares = [limitMs / 2, limitMs / 4].filter((leftMs) => leftMs >= LAST_CALL_MS + APART_MS);
  const calls = shares.map((leftMs) => ({ leftMs, text: `${secondsWords(leftMs)} left` }));
  if (limitMs > LAST_CALL_MS) calls.push({ leftMs: LAST_CALL_MS, text: "10 seconds left" });
  return calls;
}

/** The call that falls due between two looks at the clock, the latest if there are several. */
export function callDue(limitMs: number, leftBefore: number, leftNow: number): string | null {
  const due = clockCalls(limitMs).filter((call) => leftNow <= call.leftMs && call.leftMs < leftBefore);
  return due.at(-1)?.text ?? null;
}

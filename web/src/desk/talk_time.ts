import { lastingShelf } from "../line/memory";
import { makeStore, type Store } from "../line/store";
import { secondsWords } from "../words/numbers";

const NAME = "quizroom.talk";

/** How long neighbours may talk, in seconds; two minutes unless the host takes another. */
export const TALK_TIMES = [30, 60, 90, 120, 180, 300] as const;

/** The time chosen on this device, for the next talk. */
export const talkSeconds: Store<number> = makeStore(remembered());

export function chooseTalkTime(seconds: number): void {
  lastingShelf().setItem(NAME, String(seconds));
  talkSeconds.set(seconds);
}

export function talkText(seconds: number): string {
  return secondsWords(seconds * 1000);
}

function remembered(): number {
  const kept = Number(lastingShelf().getItem(NAME));
  return TALK_TIMES.some((seconds) => seconds === kept) ? kept : 120;
}

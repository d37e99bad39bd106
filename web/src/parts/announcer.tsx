import { useEffect, useRef } from "preact/hooks";
import { makeStore, type Store, useStore } from "../line/store";
import type { ClockFace } from "../wire";
import { announcement, type Shown } from "../words/announcement";
import { callDue } from "../words/clock_calls";

/** What the page's one live region says. */
export interface Announcer {
  said: Store<string>;
  say(text: string): void;
}

/** An announcer for one page. The same words twice are told apart by a space, else they would not be read again. */
export function makeAnnouncer(): Announcer {
  const said = makeStore("");
  return { said, say: (text) => said.set(said.get() === text ? `${text}\u00a0` : text) };
}

export function LiveRegion({ announcer }: { announcer: Announcer }) {
  const text = useStore(announcer.said);
  return (
    <p class="unseen" role="status" aria-live="polite">
      {text}
    </p>
  );
}

/** Says changes of phase, result and clock as the views change. */
export function useAnnouncements(announcer: Announcer, shown: Shown | null): void {
  const before = useRef<Shown | null>(null);
  useEffect(() => {
    if (shown === null) return;
    const text = announcement(before.current, shown);
    before.current = shown;
    if (text !== null) announcer.say(text);
  }, [announcer, shown?.public, shown?.own]);
}

/** Says when half, a quarter and ten seconds of the time are left. */
export function useClockCalls(announcer: Announcer, face: ClockFace | null, left: number | null): void {
  const before = useRef<number | null>(null);
  useEffect(() => {
    const was = before.current;
    before.current = left;
    if (was === null || left === null || face?.limit_ms == null || left >= was) return;
    const call = callDue(face.limit_ms, was, left);
    if (call !== null) announcer.say(call);
  }, [announcer, face, left]);
}

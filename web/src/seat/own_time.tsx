import "./gathering.css";
import { useMemo } from "preact/hooks";
import type { ServerClock } from "../line/server_clock";
import { useLeft } from "../parts/left";
import type { ClockFace, OwnView, PublicView } from "../wire";
import { factorWords } from "../words/factor";

/** A round as this seat lives it: with the player's own clock, and open as long as that runs. */
export interface Lived {
  view: PublicView;
  left: number | null;
  /** Whether the round has closed for the others. */
  late: boolean;
}

/** Where a player has more time, their own clock stands in for that of all; nothing else differs. */
export function useLived(view: PublicView, own: OwnView | null, clock: ServerClock): Lived {
  const face = ownClock(view, own);
  const left = useLeft(face ?? view.clock, clock);
  const late = view.phase === "closed" && face !== null && left !== null && left > 0;
  const again = own?.clock_again ?? false;
  const lived = useMemo(() => asLived(view, face, late, again), [view, face, late, again]);
  return { view: lived, left, late };
}

/** The player's own clock of the round on show, if they have one. */
function ownClock(view: PublicView, own: OwnView | null): ClockFace | null {
  if (own?.round !== view.round || view.result !== null) return null;
  return view.phase === "talking" ? null : own.clock;
}

function asLived(view: PublicView, face: ClockFace | null, late: boolean, again: boolean): PublicView {
  if (face === null) return view;
  if (late) return { ...view, phase: again ? "answering again" : "answering", clock: face };
  return view.phase === "closed" ? view : { ...view, clock: face };
}

/** What a player with more time is told about it, where it matters; nobody else sees this. */
export function OwnTimeNote({ view, own, late }: { view: PublicView; own: OwnView | null; late: boolean }) {
  const text = noteText(view, own, late);
  return text === "" ? null : <p class="seat_late">{text}</p>;
}

function noteText(view: PublicView, own: OwnView | null, late: boolean): string {
  if (own === null || view.phase === "finished") return "";
  if (late) return "Closed for the others. Your own time runs on; only your host can see that.";
  if (own.factor_percent === 100) return "";
  const words = factorWords(own.factor_percent);
  if (!own.factor_counts) {
    return `You may have ${words} the time, but not in this review as it is led now. Your host can see that and change it.`;
  }
  return view.phase === "gathering"
    ? `You have ${words} the time for each round. Only you and your host can see that.`
    : "";
}

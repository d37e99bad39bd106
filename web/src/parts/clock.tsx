import "./clock.css";
import { shareLeft } from "../line/server_clock";
import type { ClockFace } from "../wire";
import { secondsText, secondsWords } from "../words/numbers";

const LAST_MS = 10_000;

/** The thin rule along the top edge that shortens with the time; heavier in the last ten seconds. */
export function ClockRule({ face, left }: { face: ClockFace | null; left: number | null }) {
  if (face === null || left === null || face.limit_ms === null)
    return <div class="clock_rule" aria-hidden="true" />;
  // aim a second ahead: the rule glides there while the second passes
  const aim = face.closes_at === null ? left : Math.max(0, left - 1000);
  return (
    <div class={left <= LAST_MS ? "clock_rule clock_rule-last" : "clock_rule"} aria-hidden="true">
      <div class="clock_left" style={{ transform: `scaleX(${shareLeft(face, aim)})` }} />
    </div>
  );
}

/** The time in figures. A timer is read when asked for; calls go through the live region. */
export function ClockFigures({ face, left }: { face: ClockFace | null; left: number | null }) {
  if (face === null) return null;
  if (left === null) return <p class="clock_figures clock_figures-none">no time limit</p>;
  return (
    <p class={left <= LAST_MS ? "clock_figures clock_figures-last" : "clock_figures"} role="timer">
      <span class="unseen">{left === 0 ? "time is over" : `${secondsWords(left)} left`}</span>
      <span aria-hidden="true">
        <b>{secondsText(left)}</b>
        {left <= 59_000 && " s"}
      </span>
      {face.paused && <span class="clock_paused"> paused</span>}
    </p>
  );
}

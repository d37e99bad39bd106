import { useEffect, useState } from "preact/hooks";
import type { ServerClock } from "../line/server_clock";
import { leftMs } from "../line/server_clock";
import type { ClockFace } from "../wire";

/** Milliseconds left on the round's clock, looked at anew at every full second. */
export function useLeft(face: ClockFace | null, clock: ServerClock): number | null {
  const [left, setLeft] = useState(() => leftMs(face, clock.now()));
  useEffect(() => {
    let timer: number | undefined;
    const look = () => {
      const now = leftMs(face, clock.now());
      setLeft(now);
      // wake up just after the figure changes; a standing clock needs no waking
      if (face?.closes_at != null && now !== null && now > 0)
        timer = window.setTimeout(look, (now % 1000) + 15);
    };
    look();
    document.addEventListener("visibilitychange", look);
    return () => {
      window.clearTimeout(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, [face, clock]);
  return left;
}

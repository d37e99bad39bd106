import type { ClockFace } from "../wire";

/** One exchange of time: two readings of the local clock in ms, and the server's ms since 1970 between them. */
export interface Probe {
  sent: number;
  server: number;
  received: number;
}

export const PROBES_AT_JOIN = 5;

/** What to add to the local clock to get server time, from the probe with the shortest round trip.
 *
 * RFC 5905 section 8 with one server stamp (T2 = T3); the error is at most half that round trip. */
export function clockOffset(probes: readonly Probe[]): number | null {
  let best: Probe | null = null;
  for (const probe of probes) {
    if (best === null || roundTrip(probe) < roundTrip(best)) best = probe;
  }
  return best === null ? null : best.server - (best.sent + best.received) / 2;
}

function roundTrip(probe: Probe): number {
  return probe.received - probe.sent;
}

/** Milliseconds left on the round's clock, or null when the round is untimed. */
export function leftMs(clock: ClockFace | null, serverNow: number): number | null {
  if (clock === null) return null;
  if (clock.closes_at !== null) return Math.max(0, clock.closes_at - serverNow);
  return clock.left_ms;
}

/** How much of the rule is still there, 0 to 1. */
export function shareLeft(clock: ClockFace, left: number): number {
  return clock.limit_ms ? Math.min(1, Math.max(0, left / clock.limit_ms)) : 1;
}

export interface ServerClock {
  /** Server time in ms since 1970. */
  now(): number;
  learn(probes: readonly Probe[]): void;
  /** A first guess from a message that carries server time: late by its way here. */
  guess(serverNow: number): void;
}

/** Server time told from a local clock that never jumps (`performance.now`, not the wall clock). */
export function makeServerClock(localNow: () => number): ServerClock {
  let offset: number | null = null;
  return {
    now: () => localNow() + (offset ?? 0),
    learn(probes) {
      offset = clockOffset(probes) ?? offset;
    },
    guess(serverNow) {
      offset ??= serverNow - localNow();
    },
  };
}

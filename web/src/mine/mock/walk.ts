import type { Draft } from "../../seat/draft";

/** A walk past the stations of a mock practical. */
export interface Walk {
  /** Stations (0, 1, ...) in the order in which they are walked past. */
  order: readonly number[];
  /** Place in the order; after the last one the whole sheet is looked over. */
  at: number;
  /** Time at a station (ms); null without a clock. */
  stationMs: number | null;
  /** Time left at this station (ms). */
  leftMs: number | null;
  paused: boolean;
  /** The answer sheet, by station. */
  sheet: readonly Draft[];
  /** Time spent at each station (ms). */
  spent: readonly number[];
  handedIn: boolean;
}

const WARNING_MS = 15_000;
const BLANK: Draft = { choice: [], typed: [] };

/** A walk from station `start` (0, 1, ...) round to the one before it. */
export function beginWalk(stations: number, start: number, stationMs: number | null): Walk {
  return {
    order: Array.from({ length: stations }, (_, place) => (start + place) % stations),
    at: 0,
    stationMs,
    leftMs: stationMs,
    paused: false,
    sheet: Array.from({ length: stations }, () => BLANK),
    spent: Array.from({ length: stations }, () => 0),
    handedIn: false,
  };
}

/** The station one stands at; null once the last is passed. */
export function stationOf(walk: Walk): number | null {
  return walk.order[walk.at] ?? null;
}

/** The walk so many ms later: the clock may run out, and then it is the next station's turn. */
export function later(walk: Walk, ms: number): Walk {
  const station = stationOf(walk);
  if (station === null || walk.paused) return walk;
  const spent = walk.spent.map((before, one) => (one === station ? before + ms : before));
  if (walk.leftMs === null) return { ...walk, spent };
  const leftMs = walk.leftMs - ms;
  return leftMs > 0 ? { ...walk, spent, leftMs } : onward({ ...walk, spent });
}

/** On to the next station, with its whole time. */
export function onward(walk: Walk): Walk {
  return { ...walk, at: Math.min(walk.at + 1, walk.order.length), leftMs: walk.stationMs };
}

export function paused(walk: Walk, is: boolean): Walk {
  return { ...walk, paused: is };
}

/** As much time again as a station has, here and now. */
export function withMoreTime(walk: Walk): Walk {
  if (walk.leftMs === null || walk.stationMs === null) return walk;
  return { ...walk, leftMs: walk.leftMs + walk.stationMs };
}

/** The clock off, for good; the stations wait. */
export function withoutClock(walk: Walk): Walk {
  return { ...walk, stationMs: null, leftMs: null, paused: false };
}

export function written(walk: Walk, station: number, draft: Draft): Walk {
  return { ...walk, sheet: walk.sheet.map((before, one) => (one === station ? draft : before)) };
}

/** What is to be said aloud when the walk has come from one moment to another; null for nothing. */
export function callOf(before: Walk, after: Walk): string | null {
  const stations = after.order.length;
  const station = stationOf(after);
  if (station === null)
    return before.at < stations ? "That was the last station. Look over your sheet, then hand it in." : null;
  if (before.at !== after.at)
    return `Next station: ${station + 1}. ${after.order.length - after.at - 1} to come.`;
  if (before.leftMs === null || after.leftMs === null) return null;
  return before.leftMs > WARNING_MS && after.leftMs <= WARNING_MS ? "15 seconds" : null;
}

/** The walk as kept on this device; null for none, or one of another number of stations. */
export function readWalk(text: string | null, stations: number): Walk | null {
  try {
    const found = JSON.parse(text ?? "null") as Walk | null;
    return found?.order?.length === stations && found.sheet?.length === stations ? found : null;
  } catch {
    return null;
  }
}

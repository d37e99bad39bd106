import { describe, expect, it } from "vitest";
import {
  beginWalk,
  callOf,
  later,
  onward,
  paused,
  readWalk,
  stationOf,
  type Walk,
  withMoreTime,
  withoutClock,
  written,
} from "../src/mine/mock/walk";

const MINUTE = 60_000;

/** Every station that is stood at, walking on by the clock alone. */
function stations(walk: Walk): number[] {
  const seen: number[] = [];
  for (let now = walk; stationOf(now) !== null; now = later(now, MINUTE)) seen.push(stationOf(now) as number);
  return seen;
}

describe("a walk past the stations", () => {
  it("begins at any station and passes each once", () => {
    expect(stations(beginWalk(4, 0, MINUTE))).toEqual([0, 1, 2, 3]);
    expect(stations(beginWalk(4, 2, MINUTE))).toEqual([2, 3, 0, 1]);
  });

  it("warns once at 15 seconds, and calls the next station", () => {
    const begun = beginWalk(3, 0, MINUTE);
    const [early, warned, last, next] = [44_000, 45_000, 59_000, 60_000].map((ms) => later(begun, ms));
    expect(callOf(begun, early as Walk)).toBeNull();
    expect(callOf(early as Walk, warned as Walk)).toBe("15 seconds");
    expect(callOf(warned as Walk, last as Walk)).toBeNull();
    expect(callOf(last as Walk, next as Walk)).toBe("Next station: 2. 1 to come.");
    const over = onward(onward(next as Walk));
    expect(callOf(onward(next as Walk), over)).toContain("Look over your sheet");
    expect(callOf(over, over)).toBeNull();
  });

  it("stands while paused, waits without a clock, and gives as much time again as asked for", () => {
    const begun = beginWalk(2, 0, MINUTE);
    expect(later(paused(begun, true), 5 * MINUTE).leftMs).toBe(MINUTE);
    expect(stationOf(later(withoutClock(begun), 99 * MINUTE))).toBe(0);
    expect(withMoreTime(begun).leftMs).toBe(2 * MINUTE);
    expect(onward(withMoreTime(begun)).leftMs).toBe(MINUTE);
  });

  it("keeps what is written, and the time spent, by station", () => {
    const walk = later(written(beginWalk(3, 1, MINUTE), 1, { choice: [], typed: ["x"] }), 2000);
    expect(walk.sheet.map((draft) => draft.typed)).toEqual([[], ["x"], []]);
    expect(walk.spent).toEqual([0, 2000, 0]);
  });

  it("is read again after a reload, but not when it is spoilt or of another sheet", () => {
    const walk = onward(beginWalk(3, 1, MINUTE));
    expect(readWalk(JSON.stringify(walk), 3)).toEqual(walk);
    for (const text of [null, "{", "{}", JSON.stringify(walk)]) expect(readWalk(text, 2)).toBeNull();
  });
});

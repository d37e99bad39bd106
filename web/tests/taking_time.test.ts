import { describe, expect, it } from "vitest";
import type { Line } from "../src/line/line";
import { isOfferedAgain, takeTime, toTake } from "../src/seat/taking_time";
import type { OwnView, TimeToTake } from "../src/wire";
import { announcement } from "../src/words/announcement";
import { closedView, ownView, publicView } from "./fixtures";

const MINE: TimeToTake = { always: false, taken: 2, most: 20, until: 1_000_065_000 };
const open = publicView({ offers_time: true });
const own = (change: Partial<OwnView> = {}) => ownView({ time_to_take: MINE, ...change });

describe("more time to take", () => {
  it("is there while the round is open, counted anew where the own view is of an earlier one", () => {
    expect(toTake(open, own())).toMatchObject({ round: 3, again: false, taken: 2, late: null });
    expect(toTake(open, own({ round: 2 }))?.taken).toBe(0);
    const again = publicView({ offers_time: true, phase: "answering again" });
    expect(toTake(again, own())).toMatchObject({ again: true, taken: 0 });
    expect(toTake(again, own({ clock_again: true }))?.taken).toBe(2);
  });

  it("is there after the closing as long as the server takes it, and never once the result is out", () => {
    const held = closedView({ offers_time: true, result: null });
    expect(toTake(held, own())?.late?.closes_at).toBe(MINE.until);
    expect(toTake(held, own({ round: 2 }))).toBeNull();
    expect(toTake(closedView({ offers_time: true }), own())).toBeNull();
  });

  it("is not there where the host keeps it, without a limit, or before the own first round", () => {
    expect(toTake(publicView({}), own())).toBeNull();
    expect(toTake(open, ownView({}))).toBeNull();
    expect(toTake(open, own({ from_round: 4 }))).toBeNull();
    const unlimited = { limit_ms: null, closes_at: null, left_ms: null, paused: false };
    expect(toTake(publicView({ offers_time: true, clock: unlimited }), own())).toBeNull();
  });

  it("is asked for by its number, so that a repeat adds nothing", async () => {
    const said: unknown[] = [];
    const line = {
      say: async (draft: unknown) => {
        said.push(draft);
        return { result: "refused", text: "This round is closed." };
      },
    } as unknown as Line;
    const wish = toTake(open, own());
    expect(wish && (await takeTime(line, wish))).toBe("This round is closed.");
    expect(said).toEqual([{ type: "take_time", round: 3, time: 3 }]);
  });

  it("is offered aloud once more with at least 20 seconds left, or at the opening of a short round", () => {
    expect([isOfferedAgain(31_000, 30_000), isOfferedAgain(30_000, 29_000)]).toEqual([true, false]);
    const short = { limit_ms: 25_000, closes_at: 1_000_025_000, left_ms: null, paused: false };
    const opening = (clock: typeof short) =>
      announcement(null, { public: publicView({ offers_time: true, clock }), own: own() });
    expect(opening(short)).toContain("Press plus for more time.");
    expect(opening({ ...short, limit_ms: 45_000 })).not.toContain("plus");
  });
});

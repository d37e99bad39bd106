import { describe, expect, it } from "vitest";
import { announcement } from "../src/words/announcement";
import { closedView, ownView, publicView } from "./fixtures";

const open = { public: publicView({}), own: ownView({}) };
const clock = publicView({}).clock;

describe("the live region", () => {
  it("says that a round is open and how much time there is", () => {
    const before = {
      public: publicView({ phase: "gathering", round: 0, item: null, clock: null }),
      own: null,
    };
    expect(announcement(before, open)).toBe("Round 3 of 10 is open. You have 45 seconds.");
    const untimed = { ...open, public: publicView({ clock: null }) };
    expect(announcement(before, untimed)).toBe("Round 3 of 10 is open. There is no time limit.");
  });

  it("keeps silent when only counts change", () => {
    expect(announcement(open, { ...open, public: publicView({ version: 10, answered: 5 }) })).toBeNull();
  });

  it("tells pause, going on and added time", () => {
    const paused = {
      ...open,
      public: publicView({ clock: clock && { ...clock, paused: true, left_ms: 9000, closes_at: null } }),
    };
    expect(announcement(open, paused)).toBe("The clock is paused.");
    expect(announcement(paused, open)).toBe("The clock runs again.");
    const longer = { ...open, public: publicView({ clock: clock && { ...clock, limit_ms: 60_000 } }) };
    expect(announcement(open, longer)).toBe("15 seconds added.");
  });

  it("tells a closing once, with one's own result and the key, when both are known", () => {
    const closed = { public: closedView({}), own: ownView({}) };
    expect(announcement(open, closed)).toBeNull();
    expect(announcement({ ...open, own: null }, { ...closed, own: null })).toBe(
      "Round 3 is closed. The key: musculocutaneous nerve.",
    );
    const result = { round: 3, verdict: "wrong" as const, mark: 0, reasons: [] };
    const known = { public: closedView({}), own: ownView({ version: 40, result }) };
    expect(announcement(closed, known)).toBe(
      "Round 3 is closed. Your answer is wrong: 0 marks. The key: musculocutaneous nerve.",
    );
    expect(announcement(known, known)).toBeNull();
  });

  it("tells a held closing at once, and its result when it is shown", () => {
    const held = { public: closedView({ result: null }), own: ownView({}) };
    expect(announcement(open, held)).toBe("Round 3 is closed. The result comes when your host shows it.");
    const shown = { public: closedView({ version: 41 }), own: held.own };
    expect(announcement(held, shown)).toBeNull();
    const result = { round: 3, verdict: "right" as const, mark: 1, reasons: [] };
    const known = { ...shown, own: ownView({ result }) };
    expect(announcement(shown, known)).toBe(
      "Round 3 is closed. Your answer is right: 1 mark. The key: musculocutaneous nerve.",
    );
    expect(announcement({ ...held, own: null }, { ...shown, own: null })).toBe(
      "Round 3 is closed. The key: musculocutaneous nerve.",
    );
  });

  it("tells the record, a struck item and the end", () => {
    const closed = { public: closedView({}), own: ownView({}) };
    const explained = { ...closed, public: closedView({ phase: "explained" }) };
    expect(announcement(closed, explained)).toBe("The record is shown.");
    const result = closedView({}).result;
    const struck = { ...closed, public: closedView({ result: result && { ...result, struck: true } }) };
    expect(announcement(closed, struck)).toBe("This item is struck.");
    expect(announcement(struck, closed)).toBe("This item counts again.");
    const end = { public: closedView({ phase: "finished" }), own: ownView({ marks: 7.5, of: 10 }) };
    expect(announcement(explained, end)).toBe("The review is finished. You have 7.5 of 10 marks.");
  });
});

describe("stations", () => {
  const stations = { turn: 1, of: 3, over: false, to_show: 3, rows: [] };
  const at = (number: number, turn = 1) => ({
    public: publicView({ phase: "stations", item: null, stations: { ...stations, turn } }),
    own: ownView({
      station: { number, item: publicView({}).item ?? never(), asks_certainty: false },
    }),
  });

  it("tell a seat of a turn once its own station has come, and the wall at once", () => {
    expect(announcement(at(1), { ...at(1, 2), own: at(1).own })).toBeNull();
    expect(announcement({ ...at(1, 2), own: at(1).own }, at(2, 2))).toBe(
      "Turn 2 of 3. You are at station 2. You have 45 seconds.",
    );
    const wall = { ...at(1), own: null };
    expect(announcement(wall, { ...at(1, 2), own: null })).toBe("Turn 2 of 3. You have 45 seconds.");
    const over = publicView({ phase: "stations", item: null, stations: { ...stations, over: true } });
    expect(announcement(wall, { public: over, own: null })).toBe(
      "All stations are done. The results follow.",
    );
  });
});

function never(): never {
  throw new Error("the fixture holds an item");
}

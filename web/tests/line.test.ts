import { describe, expect, it } from "vitest";
import { roomInQuery } from "../src/line/line";
import { makeSeatMemory, memoryShelf, tidyDoorCode } from "../src/line/memory";
import { makeOutbox } from "../src/line/outbox";
import {
  counts,
  missedSomething,
  NOTHING_SEEN,
  withDesk,
  withOwn,
  withPublic,
  withTally,
} from "../src/line/seen";
import { clockOffset, leftMs, makeServerClock, shareLeft } from "../src/line/server_clock";
import type { DeskView, SubmitAnswer } from "../src/wire";
import { ownView, publicView } from "./fixtures";

const answer = (id: string, round: number): SubmitAnswer => ({
  id,
  type: "submit_answer",
  round,
  choice: ["B"],
});

describe("server time", () => {
  it("is the local clock plus half-way offset (RFC 5905 section 8; check value of erratum 5020)", () => {
    // synchronised clocks, 50 ms each way: the offset must be 0
    expect(clockOffset([{ sent: 1000, server: 1050, received: 1100 }])).toBe(0);
  });

  it("is told by the probe with the shortest round trip", () => {
    const slow = { sent: 0, server: 5900, received: 1000 };
    const quick = { sent: 2000, server: 7020, received: 2040 };
    expect(clockOffset([slow, quick, { ...slow }])).toBe(5000);
    expect(clockOffset([])).toBeNull();
  });

  it("keeps what it learned when a later guess comes or a probe fails", () => {
    const clock = makeServerClock(() => 100);
    clock.guess(9_100);
    expect(clock.now()).toBe(9_100);
    clock.learn([{ sent: 100, server: 9_150, received: 200 }]);
    clock.guess(50_000);
    clock.learn([]);
    expect(clock.now()).toBe(9_100);
  });

  it("gives the time left running, paused and untimed", () => {
    const running = { limit_ms: 45_000, closes_at: 10_000, left_ms: null, paused: false };
    expect(leftMs(running, 4_000)).toBe(6_000);
    expect(leftMs(running, 11_000)).toBe(0);
    expect(leftMs({ ...running, closes_at: null, left_ms: 7_000, paused: true }, 99_000)).toBe(7_000);
    expect(leftMs({ limit_ms: null, closes_at: null, left_ms: null, paused: false }, 4_000)).toBeNull();
    expect(shareLeft(running, 22_500)).toBe(0.5);
    expect(shareLeft(running, 60_000)).toBe(1);
  });
});

describe("the outbox", () => {
  it("keeps answers over a reload until they are settled", () => {
    const shelf = memoryShelf();
    makeOutbox(shelf, "box").put(answer("m1", 3));
    const later = makeOutbox(shelf, "box");
    expect(later.waiting().map((one) => one.id)).toEqual(["m1"]);
    later.settle("m1");
    expect(makeOutbox(shelf, "box").waiting()).toEqual([]);
  });

  it("keeps only the newest answer of a round", () => {
    const box = makeOutbox(memoryShelf(), "box");
    box.put(answer("m1", 3));
    box.put(answer("m2", 3));
    box.settle("m1"); // the late reply to the older one
    expect(box.waiting().map((one) => one.id)).toEqual(["m2"]);
  });

  it("starts empty from a spoilt shelf and works where storage is refused", () => {
    const spoilt = memoryShelf();
    spoilt.setItem("box", '{"no":');
    expect(makeOutbox(spoilt, "box").waiting()).toEqual([]);
    spoilt.setItem("box", '[{"type":"else"}]');
    expect(makeOutbox(spoilt, "box").waiting()).toEqual([]);
    const refusing = {
      ...memoryShelf(),
      setItem: () => {
        throw new Error("refused");
      },
    };
    const box = makeOutbox(refusing, "box");
    box.put(answer("m1", 1));
    expect(box.waiting()).toHaveLength(1);
  });
});

describe("what has been seen", () => {
  it("never goes back to an older view of the same room", () => {
    const seen = withPublic(NOTHING_SEEN, publicView({ version: 9 }));
    expect(withPublic(seen, publicView({ version: 8 })).public?.version).toBe(9);
    expect(withPublic(seen, publicView({ version: 9, players: 7 })).public?.players).toBe(7);
    expect(withPublic(seen, publicView({ version: 1, door_code: "CDFHJ" })).public?.version).toBe(1);
  });

  it("takes another player's own view but no older one of the same", () => {
    const seen = withOwn(NOTHING_SEEN, ownView({ version: 9 }));
    expect(withOwn(seen, ownView({ version: 8, marks: 5 })).own?.marks).toBe(ownView({}).marks);
    expect(withOwn(seen, ownView({ version: 1, player: "other" })).own?.player).toBe("other");
  });

  it("counts from the tally only while it is newer than the view", () => {
    let seen = withPublic(NOTHING_SEEN, publicView({ version: 9, players: 24, answered: 0 }));
    seen = withTally(seen, { version: 12, phase: "answering", round: 1, players: 24, answered: 3 });
    seen = withTally(seen, { version: 11, phase: "answering", round: 1, players: 24, answered: 2 });
    expect(counts(seen)).toEqual({ players: 24, answered: 3 });
    seen = withPublic(seen, publicView({ version: 13, players: 24, answered: 24 }));
    expect(counts(seen)).toEqual({ players: 24, answered: 24 });
  });

  it("notices from the tally that a view was missed, but never from an old tally", () => {
    const seen = withPublic(NOTHING_SEEN, publicView({ version: 9, phase: "gathering", round: 0 }));
    const tally = { version: 12, phase: "answering", round: 1, players: 24, answered: 0 } as const;
    expect(missedSomething(seen, tally)).toBe(true);
    expect(missedSomething(seen, { ...tally, phase: "gathering", round: 0 })).toBe(false);
    expect(missedSomething(seen, { ...tally, version: 8 })).toBe(false);
    expect(missedSomething(NOTHING_SEEN, tally)).toBe(false);
  });
});

describe("the seat's memory", () => {
  it("keeps a key of 256 random bits by door code until it is forgotten", () => {
    const memory = makeSeatMemory(memoryShelf());
    const key = memory.makeKey("KPTWX");
    expect(key).toMatch(/^[0-9a-f]{64}$/);
    expect([memory.keyFor("KPTWX"), memory.keyFor("CDFHJ")]).toEqual([key, null]);
    memory.forget("KPTWX");
    expect(memory.keyFor("KPTWX")).toBeNull();
    expect(memory.makeKey("KPTWX")).not.toBe(key);
  });

  it("lets nothing of an older room with the same code into a new seat", () => {
    const shelf = memoryShelf();
    makeOutbox(shelf, "quizroom.outbox.KPTWX").put(answer("m1", 3));
    makeSeatMemory(shelf).makeKey("KPTWX");
    expect(makeOutbox(shelf, "quizroom.outbox.KPTWX").waiting()).toEqual([]);
  });
});

describe("a door code", () => {
  it("goes with the line, so that a proxy may keep a room on one worker", () => {
    expect(roomInQuery("kp-twx")).toEqual({ room: "KPTWX" });
    expect(roomInQuery("")).toEqual({});
  });

  it("is forgiven small letters, spaces and dashes", () => {
    expect(tidyDoorCode(" kp-t wx")).toBe("KPTWX");
  });
});

describe("the list of players on a desk", () => {
  const desk = (version: number, handles: string[], later: boolean): DeskView =>
    ({
      room: "room-1",
      version,
      public: publicView({}),
      roster: handles.map((handle) => ({ handle })),
      roster_later: later,
    }) as unknown as DeskView;

  it("stays as it was while a newer one is on its way, and is then replaced", () => {
    const before = withDesk(NOTHING_SEEN, desk(3, ["Ada", "Bo"], false));
    const step = withDesk(before, desk(4, [], true));
    expect([step.desk?.version, step.desk?.roster.length]).toEqual([4, 2]);
    expect(withDesk(step, desk(4, ["Ada", "Bo", "Cem"], false)).desk?.roster.length).toBe(3);
  });
});

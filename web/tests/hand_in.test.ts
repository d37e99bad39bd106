// @vitest-environment happy-dom
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { Line, LineState } from "../src/line/line";
import { memoryShelf } from "../src/line/memory";
import { makeOutbox, type Outbox } from "../src/line/outbox";
import { NOTHING_SEEN } from "../src/line/seen";
import { makeServerClock } from "../src/line/server_clock";
import { makeStore } from "../src/line/store";
import { makeHandIn } from "../src/seat/hand_in";
import type { ClientMessage, Reply } from "../src/wire";

/** A line whose replies the test decides; it keeps what was said. */
function fakeLine(replyTo: (message: ClientMessage) => Partial<Reply>): {
  line: Line;
  said: ClientMessage[];
} {
  const said: ClientMessage[] = [];
  const sayAgain = async (message: ClientMessage): Promise<Reply> => {
    said.push(message);
    return { id: message.id, result: "done", now: 1, ...replyTo(message) };
  };
  const line: Line = {
    state: makeStore<LineState>("open"),
    seen: makeStore(NOTHING_SEEN),
    clock: makeServerClock(() => 0),
    sayAgain,
    say: (draft) => sayAgain({ ...draft, id: "m" } as ClientMessage),
  };
  return { line, said };
}

let outbox: Outbox;
beforeEach(() => {
  outbox = makeOutbox(memoryShelf(), "box");
});

describe("handing in", () => {
  it("says received only after the server's done", async () => {
    const received = vi.fn();
    const hands = makeHandIn(fakeLine(() => ({ answer_round: 3 })).line, outbox, received);
    const under = hands.handIn(3, ["B"], []);
    expect(hands.handed.get()?.state).toBe("sending");
    expect(received).not.toHaveBeenCalled();
    await under;
    expect(hands.handed.get()?.state).toBe("received");
    expect(received).toHaveBeenCalledOnce();
    expect(outbox.waiting()).toEqual([]);
  });

  it("keeps an answer that did not get through, and sends the very same message later", async () => {
    let down = true;
    const { line, said } = fakeLine(() => (down ? { result: "failed", code: "no_reply" } : {}));
    line.state.set("lost");
    const hands = makeHandIn(line, outbox, () => {});
    await hands.handIn(3, ["B"], []);
    expect(hands.handed.get()?.state).toBe("kept");
    expect(outbox.waiting()).toHaveLength(1);
    down = false;
    await hands.sendWaiting();
    expect(hands.handed.get()?.state).toBe("received");
    expect(new Set(said.map((message) => message.id)).size).toBe(1);
  });

  it("goes on after a reload with what was kept before", async () => {
    const { line } = fakeLine(() => ({ result: "failed", code: "no_reply" }));
    line.state.set("lost");
    await makeHandIn(line, outbox, () => {}).handIn(3, ["B"], []);
    const later = makeHandIn(fakeLine(() => ({})).line, outbox, () => {});
    expect(later.handed.get()).toMatchObject({ state: "kept", answer: { round: 3, choice: ["B"] } });
    await later.sendWaiting();
    expect(later.handed.get()?.state).toBe("received");
  });

  it("shows the server's sentence when it refuses, and does not repeat", async () => {
    const { line, said } = fakeLine(() => ({
      result: "refused",
      code: "too_late",
      text: "This round is closed.",
    }));
    const hands = makeHandIn(line, outbox, () => {});
    await hands.handIn(3, ["B"], []);
    expect(hands.handed.get()).toMatchObject({ state: "refused", text: "This round is closed." });
    await hands.sendWaiting();
    expect(said).toHaveLength(1);
  });

  it("repeats after a crowd at the door instead of giving up", async () => {
    vi.useFakeTimers();
    let crowded = true;
    const { line } = fakeLine(() => (crowded ? { result: "refused", code: "slow_down" } : {}));
    const hands = makeHandIn(line, outbox, () => {});
    await hands.handIn(3, ["B"], []);
    expect(hands.handed.get()?.state).toBe("kept");
    crowded = false;
    await vi.runAllTimersAsync();
    vi.useRealTimers();
    expect(hands.handed.get()?.state).toBe("received");
  });

  it("lets a late reply to an older answer not speak for a newer one", async () => {
    const replies: ((reply: Partial<Reply>) => void)[] = [];
    const { line } = fakeLine(() => ({}));
    line.sayAgain = (message) =>
      new Promise((settle) =>
        replies.push((reply) => settle({ id: message.id, result: "done", now: 1, ...reply })),
      );
    const hands = makeHandIn(line, outbox, () => {});
    const older = hands.handIn(3, ["A"], []);
    const newer = hands.handIn(3, ["B"], []);
    replies[0]?.({});
    await older;
    expect(hands.handed.get()).toMatchObject({ state: "sending", answer: { choice: ["B"] } });
    expect(outbox.waiting()).toHaveLength(1);
    replies[1]?.({});
    await newer;
    expect(outbox.waiting()).toEqual([]);
  });
});

import { describe, expect, it } from "vitest";
import { makeLookBox, memoryDrawer } from "../src/mine/look_box";
import type { LookAnswer } from "../src/wire";
import { answerOf, fakeServer, outcomeOf, sessionWith } from "./mine_fixtures";

describe("answers kept on this device", () => {
  it("outlive the page, and the first to a look stays", () => {
    const drawer = memoryDrawer();
    makeLookBox(drawer, "p").put(answerOf("a", { choice: ["A"] }));
    makeLookBox(drawer, "p").put(answerOf("a", { choice: ["B"] }));
    expect(makeLookBox(drawer, "p").waiting()).toEqual([answerOf("a", { choice: ["A"] })]);
  });

  it("are not overwritten by a second tab", () => {
    const drawer = memoryDrawer();
    const [one, other] = [makeLookBox(drawer, "p"), makeLookBox(drawer, "p")];
    one.put(answerOf("a"));
    other.put(answerOf("b"));
    one.settle(outcomeOf("a"));
    expect(other.waiting().map((answer) => answer.look)).toEqual(["b"]);
    expect(other.of("a")?.outcome?.verdict).toBe("right");
  });

  it("are thrown away only when they are old and the server has them", () => {
    const box = makeLookBox(memoryDrawer(), "p");
    for (const look of ["a", "b"]) box.put(answerOf(look, { answered_at: 1000 }));
    box.settle(outcomeOf("b"));
    box.tidy(2000);
    expect([box.of("a")?.answer.look, box.of("b")]).toEqual(["a", null]);
  });

  it("belong to one player, and a spoilt slip harms nobody", () => {
    const drawer = memoryDrawer();
    makeLookBox(drawer, "p").put(answerOf("a"));
    drawer.setItem("quizroom.look.q.b", "{spoilt");
    expect(makeLookBox(drawer, "q").waiting()).toEqual([]);
    expect(makeLookBox(drawer, "p").waiting()).toHaveLength(1);
  });
});

describe("sending them", () => {
  it("keeps them without a line and sends all when there is one, each once", async () => {
    const server = fakeServer();
    const session = sessionWith(server.api);
    const takes = server.reply;
    server.reply = () => ({ kind: "no line" });
    for (const look of ["a", "b", "c"]) await session.answer([answerOf(look)]);
    expect([session.line.get(), session.waiting.get()]).toEqual(["lost", 3]);
    server.reply = takes;
    await Promise.all([session.sendWaiting(), session.sendWaiting()]);
    expect([session.line.get(), session.waiting.get()]).toEqual(["open", 0]);
    expect([...server.taken.keys()]).toEqual(["a", "b", "c"]);
  });

  it("sends again what the server took but could not say so", async () => {
    const server = fakeServer();
    const session = sessionWith(server.api);
    const takes = server.reply;
    server.reply = (answers) => {
      takes(answers);
      return { kind: "no line" };
    };
    await session.answer([answerOf("a", { choice: ["A"] })]);
    server.reply = takes;
    await session.sendWaiting();
    expect(server.taken.get("a")?.choice).toEqual(["A"]);
    expect(session.given("a")?.outcome?.due).toBe("2031-11-11");
  });

  it("splits what is too much for one message", async () => {
    const server = fakeServer();
    await sessionWith(server.api).answer(Array.from({ length: 230 }, (_, n) => answerOf(`l${n}`)));
    expect([server.messages, server.taken.size]).toEqual([3, 230]);
  });

  it("lets one answer that cannot be taken not hold up the others, and says why", async () => {
    const server = fakeServer();
    const session = sessionWith(server.api);
    const takes = server.reply;
    const spoilt = (answers: readonly LookAnswer[]) => answers.some((answer) => answer.look === "gone");
    server.reply = (answers) =>
      spoilt(answers) ? { kind: "problem", status: 404, text: "This item is gone." } : takes(answers);
    await session.answer(["a", "gone", "b"].map((look) => answerOf(look)));
    expect([...server.taken.keys()]).toEqual(["a", "b"]);
    expect(session.given("gone")?.outcome?.because).toBe("This item is gone.");
    expect(session.waiting.get()).toBe(0);
  });

  it("keeps them while the server is busy or does not know the key, and says what it says", async () => {
    const server = fakeServer();
    const session = sessionWith(server.api);
    for (const status of [401, 429, 503]) {
      server.reply = () => ({ kind: "problem", status, text: `problem ${status}` });
      await session.answer([answerOf("a")]);
      expect([session.waiting.get(), session.complaint.get()]).toEqual([1, `problem ${status}`]);
    }
  });

  it("does not ask for ever when the server says nothing of an answer", async () => {
    const server = fakeServer();
    const session = sessionWith(server.api);
    server.reply = () => ({ kind: "fresh", value: { outcomes: [] } });
    await session.answer([answerOf("a")]);
    expect([session.waiting.get(), server.messages]).toEqual([1, 1]);
  });
});

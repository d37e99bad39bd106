// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { LookFlow } from "../src/mine/look_flow";
import type { MineSession } from "../src/mine/session";
import type { Look } from "../src/wire";
import { answerOf, type FakeServer, fakeServer, lookOf, sessionWith, typedLook } from "./mine_fixtures";

let root: HTMLElement;
let server: ReturnType<typeof fakeServer>;
let session: MineSession;
let said: string[];

beforeEach(() => {
  root = document.createElement("main");
  document.body.append(root);
  window.scrollTo = () => {};
  server = fakeServer();
  session = sessionWith(server.api);
  said = [];
});
afterEach(() => {
  render(null, root);
  root.remove();
});

async function show(looks: readonly Look[]) {
  const say = (text: string) => void said.push(text);
  await act(() => render(<LookFlow title="Due today" looks={looks} session={session} say={say} />, root));
}
const text = () => root.textContent ?? "";
const press = (key: string) =>
  act(async () => {
    root
      .querySelector("#stem")
      ?.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true }));
  });
const click = (name: string) =>
  act(async () => {
    const buttons = [...root.querySelectorAll<HTMLElement>("button, a")];
    buttons.find((button) => button.textContent === name)?.click();
  });
const type = (words: string) =>
  act(() => {
    const line = root.querySelector<HTMLInputElement>("input") as HTMLInputElement;
    line.value = words;
    line.dispatchEvent(new InputEvent("input", { bubbles: true }));
  });
const without = (line: FakeServer) => {
  const takes = line.reply;
  line.reply = () => ({ kind: "no line" });
  return takes;
};

describe("looks one after another", () => {
  const missed = {
    title: "Arm",
    at: 1_951_732_800_000,
    stem: "Then?",
    chosen: "axillary nerve",
    key_text: ["x"],
  };

  it("shows nothing of the key, the record or the review before the answer", async () => {
    const look = lookOf("a", { missed });
    await show([
      { ...look, solution: { ...look.solution, contrast: "The axillary nerve supplies deltoid." } },
    ]);
    for (const secret of ["pierces it", "itself", "Then?", "key", "supplies deltoid"])
      expect(text()).not.toContain(secret);
    await press("a");
    await click("Hand in");
    for (const shown of ["wrong", "pierces it", "Then?", "axillary nerve", "supplies deltoid"])
      expect(text()).toContain(shown);
  });

  it("goes by keys alone, says the verdict, and says when it comes back", async () => {
    await show([lookOf("a"), lookOf("b")]);
    await press("b");
    await press("Enter");
    expect(said.at(-1)).toBe("right · 1 mark. The key: musculocutaneous nerve.");
    expect(text()).toContain("Asked again on Tue 11 Nov.");
    expect(document.activeElement?.textContent).toContain("(a)");
    await click("Next");
    expect(document.activeElement?.textContent).toContain("(b)");
  });

  it("takes not knowing for an answer, and ends with what came of all", async () => {
    await show([lookOf("a"), lookOf("b")]);
    await click("I do not know");
    expect(server.taken.get("a")).toMatchObject({ choice: [], typed: [] });
    await click("Next");
    await press("b");
    await press("Enter");
    await click("To the end");
    expect(text()).toContain("1 of 2 items right.");
  });

  it("judges exact terms without a line, and says of others that they are marked later", async () => {
    const takes = without(server);
    await show([typedLook("a"), typedLook("b")]);
    await type("Brachialis muscle");
    await click("Hand in");
    expect(text()).toContain("right · 1 mark");
    await click("Next");
    await type("brachalis");
    await click("Hand in");
    expect(text()).toContain("kept; marked when you are back on line");
    await click("To the end");
    expect(text()).toContain("1 of 2 items right. 1 answer will be marked when you are back on line.");
    server.reply = takes;
    await act(() => session.sendWaiting());
    expect(text()).toContain("2 of 2 items right.");
    expect([...server.taken.keys()]).toEqual(["a", "b"]);
  });

  it("goes on where it was left, and asks nothing twice", async () => {
    await session.answer([answerOf("a")]);
    await show([lookOf("a"), lookOf("b")]);
    expect(root.querySelector("#stem")?.textContent).toContain("(b)");
  });

  it("says so when nothing is left", async () => {
    await show([]);
    expect(text()).toContain("Everything here has been looked at again.");
  });
});

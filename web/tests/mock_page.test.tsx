// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { MockPage } from "../src/mine/mock/mock_page";
import type { MineSession } from "../src/mine/session";
import type { PracticeSet } from "../src/wire";
import { fakeServer, sessionWith, typedLook } from "./mine_fixtures";

let root: HTMLElement;
let server: ReturnType<typeof fakeServer>;
let session: MineSession;
let said: string[];
const SET: PracticeSet = {
  id: "set",
  title: "Mock practical",
  mode: "mock",
  seconds: 60,
  looks: ["a", "b", "c"].map((id) => typedLook(id)),
};

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval", "performance"] });
  localStorage.clear();
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
  vi.useRealTimers();
});

const show = () =>
  act(() => render(<MockPage set={SET} session={session} say={(text) => void said.push(text)} />, root));
const again = async () => {
  render(null, root);
  await show();
};
const text = () => root.textContent ?? "";
const click = (name: string) =>
  act(async () => {
    const found = [...root.querySelectorAll<HTMLElement>("button")].find((one) =>
      one.textContent?.endsWith(name),
    );
    if (found === undefined) throw new Error(`no button ${name} in ${text()}`);
    found.click();
  });
const write = (words: string) =>
  act(() => {
    const line = root.querySelector<HTMLInputElement>(".typed_input") as HTMLInputElement;
    line.value = words;
    line.dispatchEvent(new InputEvent("input", { bubbles: true }));
  });
const pass = (seconds: number) => act(() => void vi.advanceTimersByTime(seconds * 1000));
const choose = (id: string, value: string) =>
  act(() => {
    const select = root.querySelector<HTMLSelectElement>(id) as HTMLSelectElement;
    select.value = value;
    select.dispatchEvent(new Event("change", { bubbles: true }));
  });
const station = () => root.querySelector(".mock_top h1")?.textContent;
const sheet = () =>
  [...root.querySelectorAll(".mock_sheet-wide .sheet_line")].map((line) => line.textContent);

describe("a mock practical", () => {
  it("walks on by the clock, warns at 15 seconds, and fills the numbered sheet", async () => {
    await show();
    await click("Begin");
    expect(station()).toBe("Station 1 of 3");
    await write("brachialis");
    expect(sheet()).toEqual(["1brachialis", "2blank", "3blank"]);
    await pass(46);
    expect(said).toEqual(["15 seconds"]);
    await pass(15);
    expect(station()).toBe("Station 2 of 3");
    expect(said.at(-1)).toBe("Next station: 2. 1 to come.");
    expect((document.activeElement as HTMLElement).className).toContain("typed_input");
  });

  it("begins at any station, and its clock can be off or longer", async () => {
    await show();
    await choose("#mock-start", "2");
    await choose("#mock-time", "2");
    await click("Begin");
    await pass(100);
    expect(station()).toBe("Station 3 of 3");
    await click("Clock off");
    await pass(600);
    expect(station()).toBe("Station 3 of 3");
  });

  it("goes on after a reload where one stood, with what was written", async () => {
    await show();
    await click("Begin");
    await write("brachialis");
    await click("Next station");
    await again();
    expect([station(), sheet()[0]]).toEqual(["Station 2 of 3", "1brachialis"]);
  });

  it("shows no key until the whole sheet is looked over and handed in; blanks are answers too", async () => {
    await show();
    await click("Begin");
    for (const _ of SET.looks) await click(_.id === "c" ? "To the sheet" : "Next station");
    expect(text()).toContain("3 lines blank.");
    await act(() => root.querySelectorAll<HTMLElement>(".sheet_open")[1]?.click());
    await write("brachialis");
    await click("Back to the sheet");
    expect(text()).not.toContain("musculocutaneous");
    expect(server.taken.size).toBe(0);
    await click("Hand in the sheet");
    expect([...server.taken.values()].map((answer) => answer.typed)).toEqual([[], ["brachialis"], []]);
    expect(text()).toContain("musculocutaneous nerve");
    await again();
    expect(text()).toContain("of 3 marks");
  });
});

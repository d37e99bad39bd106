// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { makeStore } from "../src/line/store";
import { Answering } from "../src/seat/answering";
import type { Handed, HandIn } from "../src/seat/hand_in";
import type { ItemFace, PublicView } from "../src/wire";
import { publicView } from "./fixtures";

let root: HTMLElement;
let handed: ReturnType<typeof makeStore<Handed | null>>;
let handIn: ReturnType<typeof vi.fn>;

beforeEach(() => {
  localStorage.clear();
  root = document.createElement("main");
  document.body.append(root);
  window.scrollTo = () => {};
  handed = makeStore<Handed | null>(null);
  handIn = vi.fn(async () => {});
});
afterEach(() => {
  render(null, root);
  root.remove();
});

function show(change: Partial<ItemFace> = {}, phase: PublicView["phase"] = "answering") {
  const view = publicView({ phase });
  const item = { ...(view.item as ItemFace), ...change };
  const hands: HandIn = { handed, handIn: handIn as HandIn["handIn"], sendWaiting: async () => {} };
  act(() => render(<Answering view={view} item={item} known={null} hands={hands} say={() => {}} />, root));
}

const press = (key: string, on: Element = root.querySelector("#stem") as Element) =>
  act(() => void on.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, cancelable: true })));
const checked = () =>
  [...root.querySelectorAll<HTMLInputElement>("input:checked")].map((input) => input.value);
const state = () => root.querySelector(".hand_in_state")?.textContent;

describe("an open round at the seat", () => {
  it("is a radio group named by its stem, with the focus on the stem", () => {
    show();
    const group = root.querySelector('[role="radiogroup"]');
    expect(group?.getAttribute("aria-labelledby")).toContain("stem");
    expect(document.activeElement?.id).toBe("stem");
  });

  it("chooses by letter or figure and hands in only when told to", () => {
    show();
    press("b");
    expect(checked()).toEqual(["B"]);
    press("3");
    expect(checked()).toEqual(["C"]);
    expect(handIn).not.toHaveBeenCalled();
    expect(state()).toBe("Not handed in yet.");
    act(() => root.querySelector<HTMLButtonElement>("button")?.click());
    expect(handIn).toHaveBeenCalledWith(3, ["C"], []);
  });

  it("leaves keys with Ctrl, and letters that are typed, alone", () => {
    show({ format: "typed", options: [] });
    const letter = new KeyboardEvent("keydown", { key: "b", bubbles: true, cancelable: true });
    act(() => void root.querySelector("input")?.dispatchEvent(letter));
    expect(letter.defaultPrevented).toBe(false);
    show();
    const withControl = new KeyboardEvent("keydown", { key: "a", ctrlKey: true, bubbles: true });
    act(() => void root.querySelector("#stem")?.dispatchEvent(withControl));
    expect(checked()).toEqual([]);
  });

  it("says received when the server has it, and that a change is not handed in yet", () => {
    show();
    const answer = { id: "m1", type: "submit_answer" as const, round: 3, choice: ["B"], typed: [] };
    act(() => handed.set({ answer, state: "received", text: "" }));
    expect(state()).toContain("Answer received: B");
    expect(checked()).toEqual(["B"]);
    press("a");
    expect(state()).toContain("Your change is not handed in yet");
  });

  it("says until when an answer may be changed: the close, or at stations the bell", () => {
    const answer = { id: "m1", type: "submit_answer" as const, round: 3, choice: ["B"], typed: [] };
    handed.set({ answer, state: "received", text: "" });
    show();
    expect(state()).toContain("You may change it until the round closes.");
    show({}, "stations");
    expect(state()).toContain("You may change it until the bell.");
  });

  it("keeps a draft over a reload", () => {
    show();
    press("c");
    render(null, root);
    show();
    expect(checked()).toEqual(["C"]);
  });

  it("asks for as many lines as terms are asked for, and corrects nothing", () => {
    show({ format: "free_list", pick: 3, options: [] });
    const lines = [...root.querySelectorAll("input")];
    expect(lines).toHaveLength(3);
    expect(lines.every((line) => line.getAttribute("autocapitalize") === "off" && !line.spellcheck)).toBe(
      true,
    );
  });
});

// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { makeStore } from "../src/line/store";
import { PlaceRows } from "../src/parts/place_rows";
import { Answering } from "../src/seat/answering";
import type { Handed, HandIn } from "../src/seat/hand_in";
import { closedRound } from "../src/seat/history";
import type { AnswerFace, ItemFace, RowResult } from "../src/wire";
import { closedView, ownView, publicView } from "./fixtures";

const ITEM = publicView({}).item as ItemFace;
const ORDERING: ItemFace = { ...ITEM, format: "ordering", family: "ordering", pick: 3 };
const MATCHING: ItemFace = {
  ...ITEM,
  format: "matching",
  family: "matching",
  stems: ["deltoid", "brachialis"],
  pick: 2,
};

let root: HTMLElement;
let handIn: ReturnType<typeof vi.fn>;
let say: ReturnType<typeof vi.fn<(text: string) => void>>;

beforeEach(() => {
  localStorage.clear();
  root = document.createElement("main");
  document.body.append(root);
  window.scrollTo = () => {};
  handIn = vi.fn(async () => {});
  say = vi.fn();
});
afterEach(() => {
  render(null, root);
  root.remove();
});

function show(item: ItemFace, known: AnswerFace | null = null) {
  const handed = makeStore<Handed | null>(null);
  const hands: HandIn = { handed, handIn: handIn as HandIn["handIn"], sendWaiting: async () => {} };
  act(() =>
    render(<Answering view={publicView({})} item={item} known={known} hands={hands} say={say} />, root),
  );
}

const button = (name: string) => root.querySelector<HTMLButtonElement>(`button[aria-label="${name}"]`);
const click = (name: string) => act(() => button(name)?.click());
const order = () => [...root.querySelectorAll(".rows-order .row_letter")].map((one) => one.textContent);
const submit = () => act(() => root.querySelector<HTMLButtonElement>(".hand_in_button")?.click());
const choose = (row: number, letter: string) =>
  act(() => {
    const select = root.querySelectorAll("select")[row] as HTMLSelectElement;
    select.value = letter;
    select.dispatchEvent(new Event("change", { bubbles: true }));
  });

describe("an ordering at the seat", () => {
  it("begins with the letters as printed, which may be handed in as they are", () => {
    show(ORDERING);
    expect(order()).toEqual(["A", "B", "C"]);
    submit();
    expect(handIn).toHaveBeenCalledWith(3, ["A", "B", "C"], []);
  });

  it("moves a row by its buttons, says its new place and keeps the focus on it", () => {
    show(ORDERING);
    button("Move C up")?.focus();
    click("Move C up");
    expect(order()).toEqual(["A", "C", "B"]);
    expect(say).toHaveBeenCalledWith("C is at place 2 of 3.");
    expect(document.activeElement?.getAttribute("aria-label")).toBe("Move C up");
    submit();
    expect(handIn).toHaveBeenCalledWith(3, ["A", "C", "B"], []);
  });

  it("moves a row by the arrow keys, and no further than the ends", () => {
    show(ORDERING);
    const key = new KeyboardEvent("keydown", { key: "ArrowDown", bubbles: true, cancelable: true });
    act(() => void button("Move A up")?.dispatchEvent(key));
    expect(order()).toEqual(["B", "A", "C"]);
    click("Move C down");
    expect(order()).toEqual(["B", "A", "C"]);
    expect(button("Move C down")?.getAttribute("aria-disabled")).toBe("true");
  });

  it("shows what was handed in before, and knows another order for a change", () => {
    show(ORDERING, { round: 3, choice: ["C", "A", "B"], typed: [] });
    expect(order()).toEqual(["C", "A", "B"]);
    submit();
    expect(handIn).not.toHaveBeenCalled();
    click("Move C down");
    submit();
    expect(handIn).toHaveBeenCalledWith(3, ["A", "C", "B"], []);
  });
});

describe("a matching at the seat", () => {
  it("has one labelled list of letters for each row", () => {
    show(MATCHING);
    const labels = [...root.querySelectorAll("select")].map((one) => one.closest("label")?.textContent);
    expect(labels.map((label) => label?.startsWith("deltoid") || label?.startsWith("brachialis"))).toEqual([
      true,
      true,
    ]);
    expect(root.querySelectorAll("select option")).toHaveLength(8);
  });

  it("hands in a letter for each row, also with a row left open, but not nothing at all", () => {
    show(MATCHING);
    submit();
    expect(handIn).not.toHaveBeenCalled();
    choose(1, "B");
    submit();
    expect(handIn).toHaveBeenLastCalledWith(3, ["", "B"], []);
    choose(0, "B");
    expect(root.querySelector("#choose")?.textContent).toContain("Chosen: 2 of 2.");
    submit();
    expect(handIn).toHaveBeenLastCalledWith(3, ["B", "B"], []);
  });
});

const ROWS: RowResult[] = [
  { stem: "deltoid", letter: "A", text: "axillary nerve", count: 3, share: 0.75, letters: [], reason: null },
  {
    stem: "brachialis",
    letter: "B",
    text: "musculocutaneous nerve",
    count: 1,
    share: 0.25,
    letters: [{ letter: "C", count: 3 }],
    reason: null,
  },
];

describe("rows after closing", () => {
  it("tell key, own choice and share each in words", () => {
    act(() => render(<PlaceRows rows={ROWS} chosen={["A", "C"]} />, root));
    const rows = [...root.querySelectorAll("li")].map((row) => row.textContent ?? "");
    expect(rows[0]).toContain("✓ your choice");
    expect(rows[0]).toContain("deltoid: axillary nerve");
    expect(rows[0]).toContain("75 %");
    expect(rows[1]).toContain("✕ you: C");
  });

  it("say nothing of a choice on the wall", () => {
    act(() => render(<PlaceRows rows={ROWS} chosen={[]} />, root));
    expect(root.textContent).not.toContain("you");
  });

  it("are remembered in the player's order", () => {
    const own = ownView({ answer: { round: 3, choice: ["C", "A", "B"], typed: [] } });
    expect(closedRound(closedView({ item: ORDERING }), own)?.answer).toEqual([
      "median nerve",
      "axillary nerve",
      "musculocutaneous nerve",
    ]);
    const rows = ownView({ answer: { round: 3, choice: ["", "B"], typed: [] } });
    expect(closedRound(closedView({ item: MATCHING }), rows)?.answer).toEqual([
      "deltoid: –",
      "brachialis: musculocutaneous nerve",
    ]);
  });
});

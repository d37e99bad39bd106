// @vitest-environment happy-dom
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { choiceOf, EMPTY_DRAFT, proposed, roundsOf, shownCells, whatIsWrongIn } from "../src/desk/blueprint";
import { BlueprintTable } from "../src/desk/blueprint_table";
import type { BlueprintGrid } from "../src/wire";

const cell = (region: string, family: string, most: number, rounds: number) => ({
  region,
  family,
  most,
  rounds,
  reason: most === 0 ? "nothing of this kind is certain" : "",
});

const grid: BlueprintGrid = {
  course: "an-140",
  regions: [
    { id: "arm", name: "arm" },
    { id: "forearm", name: "forearm" },
  ],
  families: ["nerve", "artery"],
  cells: [
    cell("arm", "nerve", 4, 2),
    cell("arm", "artery", 0, 0),
    cell("forearm", "nerve", 60, 1),
    cell("forearm", "artery", 9, 1),
  ],
  warm_ups: 3,
};
const draft = { ...EMPTY_DRAFT, numbers: proposed(grid) };
const cells = shownCells(grid, grid.families);

describe("the blueprint", () => {
  it("counts the rounds of the families that are chosen, and those to warm up", () => {
    expect(roundsOf(draft, cells)).toBe(4);
    expect(roundsOf({ ...draft, warm_up: 2 }, cells)).toBe(6);
    expect(roundsOf(draft, shownCells(grid, ["artery"]))).toBe(1);
    expect(roundsOf({ ...draft, weights: true, share: 12 }, cells)).toBe(12);
  });

  it("sends the cells that have a number, as rounds or as weights", () => {
    const choice = choiceOf(draft, cells);
    expect(choice.cells).toEqual([
      { region: "arm", family: "nerve", rounds: 2 },
      { region: "forearm", family: "nerve", rounds: 1 },
      { region: "forearm", family: "artery", rounds: 1 },
    ]);
    expect(choice.share).toBeNull();
    expect(choiceOf({ ...draft, weights: true, share: 12 }, cells).share).toBe(12);
  });

  it("says what is wrong before anything is sent", () => {
    const wrong = (numbers: Record<string, number>) => whatIsWrongIn({ ...draft, numbers }, cells, 60);
    expect(wrong(draft.numbers)).toBe("");
    expect(wrong({})).toContain("at least one cell");
    expect(wrong({ "arm/nerve": Number.NaN })).toContain("whole numbers");
    expect(wrong({ "arm/nerve": 1.5 })).toContain("whole numbers");
    expect(wrong({ "arm/nerve": 40, "forearm/nerve": 40 })).toContain("these are 80");
    const weights = { ...draft, weights: true, share: Number.NaN };
    expect(whatIsWrongIn(weights, cells, 60)).toContain("not a number");
  });
});

describe("the grid", () => {
  let root: HTMLElement;
  const typed: [string, number][] = [];

  beforeEach(() => {
    root = document.createElement("main");
    document.body.append(root);
    const onNumber = (place: string, value: number) => typed.push([place, value]);
    const table = <BlueprintTable grid={grid} families={grid.families} draft={draft} onNumber={onNumber} />;
    act(() => render(table, root));
  });
  afterEach(() => {
    render(null, root);
    root.remove();
  });

  const input = (name: string) => root.querySelector<HTMLInputElement>(`input[aria-label="${name}"]`);

  it("disables a cell that yields nothing, and says why to everybody", () => {
    const empty = input("arm, artery");
    expect(empty?.disabled).toBe(true);
    const note = root.querySelector(`[id="${empty?.getAttribute("aria-describedby")}"]`);
    expect(note?.textContent).toBe("none: nothing of this kind is certain");
    expect(input("arm, nerve")?.disabled).toBe(false);
  });

  it("sums up rows, columns and everything", () => {
    const sums = [...root.querySelectorAll(".grid_sum")].map((sum) => sum.lastChild?.textContent);
    expect(sums).toEqual(["2", "2", "3", "1", "4"]);
  });

  it("tells what was typed and where", () => {
    const number = input("forearm, artery");
    if (number) number.value = "5";
    act(() => void number?.dispatchEvent(new Event("input", { bubbles: true })));
    expect(typed.at(-1)).toEqual(["forearm/artery", 5]);
  });
});

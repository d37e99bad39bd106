import type { BlueprintChoice, BlueprintGrid } from "../wire";
import type { Plan } from "./plan";

type CellLine = BlueprintGrid["cells"][number];

/** What the host has made of the grid so far; numbers are by region and family. */
export interface Draft {
  numbers: Readonly<Record<string, number>>;
  weights: boolean;
  share: number;
  interleave: boolean;
  warm_up: number;
  aim: NonNullable<BlueprintChoice["aim"]>;
}

export const EMPTY_DRAFT: Draft = {
  numbers: {},
  weights: false,
  share: 10,
  interleave: true,
  warm_up: 0,
  aim: "mixed",
};

export function placeOf(cell: { region: string; family: string }): string {
  return `${cell.region}/${cell.family}`;
}

/** The even share that the server proposes. */
export function proposed(grid: BlueprintGrid): Record<string, number> {
  return Object.fromEntries(grid.cells.map((cell) => [placeOf(cell), cell.rounds]));
}

/** The cells of the families that are chosen, row by row. */
export function shownCells(grid: BlueprintGrid, families: readonly string[]): CellLine[] {
  return grid.cells.filter((cell) => families.includes(cell.family));
}

export function numberIn(draft: Draft, cell: CellLine): number {
  return cell.most === 0 ? 0 : (draft.numbers[placeOf(cell)] ?? 0);
}

export function sumOf(draft: Draft, cells: readonly CellLine[]): number {
  return cells.reduce((sum, cell) => sum + (numberIn(draft, cell) || 0), 0);
}

/** All rounds of the review: those of the grid, and those to warm up. */
export function roundsOf(draft: Draft, cells: readonly CellLine[]): number {
  return draft.warm_up + (draft.weights ? draft.share : sumOf(draft, cells));
}

/** What is sent: the cells that have a number. */
export function choiceOf(draft: Draft, cells: readonly CellLine[]): BlueprintChoice {
  return {
    cells: cells
      .map((cell) => ({ region: cell.region, family: cell.family, rounds: numberIn(draft, cell) }))
      .filter((cell) => cell.rounds !== 0),
    share: draft.weights ? draft.share : null,
    interleave: draft.interleave,
    warm_up: draft.warm_up,
    aim: draft.aim,
  };
}

/** What keeps the grid from being dealt, as a sentence; empty when nothing does. */
export function whatIsWrongIn(draft: Draft, cells: readonly CellLine[], most: number): string {
  const numbers = cells.map((cell) => numberIn(draft, cell));
  if (numbers.some((number) => !Number.isInteger(number) || number < 0 || number > most)) {
    return `Blueprint: whole numbers from 0 to ${most}.`;
  }
  if (sumOf(draft, cells) === 0) return "Blueprint: fill in at least one cell.";
  const rounds = roundsOf(draft, cells);
  if (!Number.isInteger(rounds) || rounds < 1 || rounds > most) {
    return `Blueprint: from 1 to ${most} rounds in all; these are ${rounds || "not a number"}.`;
  }
  return "";
}

/** The grid of the plan's course list, with so many rounds shared out evenly over its families. */
export async function readGrid(plan: Plan, rounds: number): Promise<BlueprintGrid> {
  const asked = new URLSearchParams({ rounds: String(rounds || 0), typed: plan.typed ? "1" : "0" });
  for (const family of plan.families) asked.append("family", family);
  const answer = await fetch(`/desk/blueprint/${encodeURIComponent(plan.course)}?${asked}`);
  if (!answer.ok) throw new Error(answer.statusText);
  return (await answer.json()) as BlueprintGrid;
}

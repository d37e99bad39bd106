import "./blueprint.css";
import { useEffect, useState } from "preact/hooks";
import type { BlueprintGrid } from "../wire";
import { countOf } from "../words/numbers";
import { type Draft, EMPTY_DRAFT, proposed, readGrid, shownCells, sumOf } from "./blueprint";
import { BlueprintOptions } from "./blueprint_options";
import { BlueprintTable } from "./blueprint_table";
import { familyWord } from "./family_words";
import type { Plan } from "./plan";

const NO_GRID = "The grid could not be read. Untick and tick the box to try again.";

/** The host's blueprint, if there is one: the grid as the server counted it, and what was made of it. */
export interface Filled {
  grid: BlueprintGrid | null;
  draft: Draft;
}

/** The grid of regions and families, shown and used only while its box is ticked. */
export function BlueprintField(props: {
  plan: Plan;
  filled: Filled | null;
  onFilled: (change: (before: Filled | null) => Filled | null) => void;
}) {
  const { plan, filled, onFilled } = props;
  const [failed, setFailed] = useState("");
  const [asked, ask] = useState(0);
  const isOn = filled !== null;
  // read anew for another course list or when asked to: not whenever a family is ticked
  useEffect(() => {
    if (!isOn) return;
    let isWanted = true;
    onFilled((before) => before && withoutOtherGrid(before, plan.course));
    readGrid(plan, filled.draft.share).then(
      (grid) => isWanted && onFilled((before) => before && withGrid(before, grid)),
      () => isWanted && setFailed(NO_GRID),
    );
    return () => {
      isWanted = false;
      setFailed("");
    };
  }, [isOn, plan.course, asked]);
  const toggle = (on: boolean) =>
    onFilled(() => (on ? { grid: null, draft: { ...EMPTY_DRAFT, share: plan.rounds } } : null));
  return (
    <fieldset class={isOn ? "choice blueprint blueprint-open" : "choice blueprint"}>
      <legend class="field_label">Blueprint</legend>
      <label class="choice_line">
        <input type="checkbox" checked={isOn} onChange={(event) => toggle(event.currentTarget.checked)} />
        <span>fill in a grid of regions and families</span>
      </label>
      {isOn && (failed || !filled.grid) && (
        <p class="choice_note" role="status">
          {failed || "Counting what the course list yields …"}
        </p>
      )}
      {filled?.grid && (
        <Sheet
          plan={plan}
          grid={filled.grid}
          draft={filled.draft}
          onDraft={(draft) => onFilled((before) => before && { ...before, draft })}
          onShare={() => ask(asked + 1)}
        />
      )}
    </fieldset>
  );
}

function Sheet(props: {
  plan: Plan;
  grid: BlueprintGrid;
  draft: Draft;
  onDraft: (draft: Draft) => void;
  onShare: () => void;
}) {
  const { plan, grid, draft, onDraft } = props;
  return (
    <>
      <BlueprintTable
        grid={grid}
        families={plan.families}
        draft={draft}
        onNumber={(place, value) => onDraft({ ...draft, numbers: { ...draft.numbers, [place]: value } })}
      />
      <p class="choice_note" role="status">
        {totalText(plan, grid, draft)}
      </p>
      <Reasons grid={grid} families={plan.families} />
      <BlueprintOptions {...props} />
    </>
  );
}

/** Why the disabled cells are disabled, to be read without pointing at them. */
function Reasons({ grid, families }: { grid: BlueprintGrid; families: readonly string[] }) {
  const empty = shownCells(grid, families).filter((cell) => cell.most === 0);
  const nameOf = (id: string) => grid.regions.find((region) => region.id === id)?.name ?? id;
  const reasons = [...new Set(empty.map((cell) => cell.reason))];
  return (
    <>
      {reasons.map((reason) => (
        <p key={reason} class="choice_note grid_reason">
          none: {reason} (
          {empty
            .filter((cell) => cell.reason === reason)
            .map((cell) => `${nameOf(cell.region)} × ${familyWord(cell.family)}`)
            .join(", ")}
          )
        </p>
      ))}
    </>
  );
}

function totalText(plan: Plan, grid: BlueprintGrid, draft: Draft): string {
  const sum = sumOf(draft, shownCells(grid, plan.families));
  const warmUp = draft.warm_up > 0 ? `${draft.warm_up} to warm up, then ` : "";
  if (!draft.weights) return `${warmUp}${countOf(sum, "round")} by the grid.`;
  return `${warmUp}${countOf(draft.share || 0, "round")} shared out by these weights.`;
}

/** While a list is being counted, the grid of another one is not shown. */
function withoutOtherGrid(filled: Filled, course: string): Filled {
  return filled.grid?.course === course ? filled : { ...filled, grid: null };
}

function withGrid(filled: Filled, grid: BlueprintGrid): Filled {
  const warm_up = Math.min(filled.draft.warm_up, grid.warm_ups);
  return { grid, draft: { ...filled.draft, warm_up, numbers: proposed(grid) } };
}

/** The cells that count: those of the families that are chosen. */
export function cellsOf(filled: Filled, plan: Plan): BlueprintGrid["cells"][number][] {
  return filled.grid ? shownCells(filled.grid, plan.families) : [];
}

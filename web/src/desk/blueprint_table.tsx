import { useId } from "preact/hooks";
import type { BlueprintGrid } from "../wire";
import { type Draft, numberIn, placeOf, shownCells, sumOf } from "./blueprint";
import { familyWord } from "./family_words";
import { MOST_ROUNDS } from "./plan";

type CellLine = BlueprintGrid["cells"][number];

interface TableProps {
  grid: BlueprintGrid;
  families: readonly string[];
  draft: Draft;
  onNumber: (place: string, value: number) => void;
}

/** Regions by families, with a number in each cell and the sums of rows and columns. */
export function BlueprintTable(props: TableProps) {
  const { grid, draft } = props;
  const families = grid.families.filter((family) => props.families.includes(family));
  const cells = shownCells(grid, families);
  const inFamily = (family: string) => cells.filter((cell) => cell.family === family);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: where it scrolls, the keyboard must be able to scroll it
    <section class="grid_scroll" aria-label="Blueprint grid" tabIndex={0}>
      <table class="grid">
        <caption class="unseen">{draft.weights ? "Weights" : "Rounds"} by region and family</caption>
        <thead>
          <tr>
            <td />
            {families.map((family) => (
              <th key={family} scope="col">
                {familyWord(family)}
              </th>
            ))}
            <th scope="col">in all</th>
          </tr>
        </thead>
        <tbody>
          {grid.regions.map((region) => (
            <Row key={region.id} {...props} name={region.name} cells={cells.filter(isIn(region.id))} />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">in all</th>
            {families.map((family) => (
              <td key={family} class="grid_sum">
                <span class="grid_label">{familyWord(family)}</span>
                {sumOf(draft, inFamily(family))}
              </td>
            ))}
            <td class="grid_sum grid_total">
              <span class="grid_label">in all</span>
              {sumOf(draft, cells)}
            </td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

function Row(props: TableProps & { name: string; cells: readonly CellLine[] }) {
  const { name, cells, draft } = props;
  return (
    <tr>
      <th scope="row">{name}</th>
      {cells.map((cell) => (
        <td key={cell.family} class="grid_cell">
          <span class="grid_label" aria-hidden="true">
            {familyWord(cell.family)}
          </span>
          <NumberCell {...props} cell={cell} />
        </td>
      ))}
      <td class="grid_sum">
        <span class="grid_label">in all</span>
        {sumOf(draft, cells)}
      </td>
    </tr>
  );
}

function NumberCell({ name, cell, draft, onNumber }: TableProps & { name: string; cell: CellLine }) {
  const note = useId();
  const number = numberIn(draft, cell);
  const isTooMuch = !draft.weights && number > cell.most;
  return (
    <>
      <input
        class="grid_number"
        type="number"
        inputMode="numeric"
        min={0}
        max={MOST_ROUNDS}
        aria-label={`${name}, ${familyWord(cell.family)}`}
        aria-describedby={note}
        aria-invalid={isTooMuch || undefined}
        disabled={cell.most === 0}
        title={cell.reason || undefined}
        value={cell.most === 0 ? "" : number}
        onInput={(event) => onNumber(placeOf(cell), event.currentTarget.valueAsNumber)}
      />
      <span id={note} class={isTooMuch ? "grid_most grid_most-over" : "grid_most"}>
        {cell.most === 0 ? <NothingThere reason={cell.reason} /> : mostText(cell.most, isTooMuch)}
      </span>
    </>
  );
}

function NothingThere({ reason }: { reason: string }) {
  return (
    <>
      none<span class="unseen">: {reason}</span>
    </>
  );
}

function mostText(most: number, isTooMuch: boolean): string {
  if (isTooMuch) return `only ${most}`;
  return most >= MOST_ROUNDS ? `of ${MOST_ROUNDS}+` : `of ${most}`;
}

function isIn(region: string) {
  return (cell: CellLine) => cell.region === region;
}

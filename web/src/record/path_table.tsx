import "./path_table.css";
import type { ActionLine, Record as MuscleRecord, NervePath, Site } from "../wire";
import { listed } from "../words/numbers";
import { ROLE_WORD } from "./path";

/** A row of the table: what it is, where it lies, and the part that it is only for ("" for no such limit). */
export interface TableRow {
  what: string;
  where: string;
  part: string;
}

const STATUS = { core: "", variant: " (variant)", minority: " (minority reading)" };

/** All that the drawn path and its supply show, a row each, in the order in which they are read. */
function tableRows(record: MuscleRecord): TableRow[] {
  return [
    ...record.heads.flatMap((head) => head.origins.map((site) => siteRow("origin", site, head.name))),
    ...record.joints.flatMap((row) => [
      { what: "joint", where: row.joint, part: listed(row.parts) },
      ...row.actions.map(actionRow),
    ]),
    ...record.heads.flatMap((head) => head.insertions.map((site) => siteRow("insertion", site, head.name))),
    ...record.nerves.map((nerve) => ({
      what: "nerve",
      where: wayOf(nerve.path, nerve.branch) + rootsOf(nerve) + STATUS[nerve.status],
      part: nerve.part,
    })),
    ...record.arteries.map((artery) => ({
      what: "artery",
      where: wayOf(artery.path, artery.branch) + STATUS[artery.status],
      part: artery.part,
    })),
  ];
}

function actionRow(action: ActionLine): TableRow {
  const where = `${action.verb}, ${ROLE_WORD[action.role]}${action.condition ? ` (${action.condition})` : ""}`;
  return { what: "action", where: where + STATUS[action.status], part: action.part };
}

/** The roots, and which of them count most where that is not all. */
function rootsOf({ roots, main }: NervePath): string {
  if (roots.length === 0) return "";
  const chiefly = main.length > 0 && main.length < roots.length ? `, chiefly ${main.join(", ")}` : "";
  return ` (roots ${roots.join(", ")}${chiefly})`;
}

/** The steps from root or trunk, then the branch that ends in the muscle. */
function wayOf(steps: readonly string[], branch: string): string {
  const way = steps.filter((step) => step !== "").join(" › ");
  return branch ? `${way}, ${branch}` : way;
}

function siteRow(what: string, site: Site, part: string): TableRow {
  const place = [site.label, site.detail].filter((text) => text !== "").join(", ");
  return { what, where: `${place}${STATUS[site.status]}`, part };
}

/** The picture's twin in words, for whoever reads cell by cell; the drawing itself is hidden from screen readers. */
export function PathTable({ record }: { record: MuscleRecord }) {
  return (
    <details class="path_table">
      <summary>The picture as a table</summary>
      <table>
        <caption>Path and supply of {record.name}</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Where</th>
            <th scope="col">Only for</th>
          </tr>
        </thead>
        <tbody>
          {tableRows(record).map((row, index) => (
            <tr key={index}>
              <th scope="row">{row.what}</th>
              <td>{row.where}</td>
              <td>{row.part || "–"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

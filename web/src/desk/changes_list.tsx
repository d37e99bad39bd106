import "./changes.css";
import type { DeskView } from "../wire";
import { momentText } from "./planned_time";

type Change = DeskView["changes"][number];

/** What hosts changed of an item, by whom and when, folded away; nothing where nobody did. */
export function ItemChanges({ view, round }: { view: DeskView; round: number }) {
  const changes = view.changes.filter((change) => change.round === round);
  if (changes.length === 0) return null;
  return (
    <details class="sheet_more sheet_changes">
      <summary>
        Changes<span class="unseen"> of this item</span> ({changes.length})
      </summary>
      <ChangeLines changes={changes} named={false} />
    </details>
  );
}

/** All changes of the review, folded away until they are asked for. */
export function ReviewChanges({ view }: { view: DeskView }) {
  if (view.changes.length === 0) return null;
  return (
    <details class="roster_changes">
      <summary>Changes ({view.changes.length})</summary>
      <ChangeLines changes={view.changes} named />
    </details>
  );
}

function ChangeLines({ changes, named }: { changes: readonly Change[]; named: boolean }) {
  return (
    <ol class="changes">
      {changes.map((change, place) => (
        <li key={place}>
          {named && change.round > 0 && `Item ${change.round}. `}
          {change.text}
          {change.reason && ` (${change.reason})`}
          <span class="change_who"> {[change.by, timeOf(change.at)].filter(Boolean).join(", ")}</span>
        </li>
      ))}
    </ol>
  );
}

function timeOf(at: number | null): string {
  return at === null ? "" : momentText(at);
}

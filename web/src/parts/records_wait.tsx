import "./records_wait.css";
import { listed } from "../words/numbers";

/** Says which records are still to come: a later round asks about these muscles. */
export function RecordsWait({ names }: { names: readonly string[] }) {
  if (names.length === 0) return null;
  return <p class="records_wait">{recordsWaitText(names)}</p>;
}

function recordsWaitText(names: readonly string[]): string {
  if (names.length === 1)
    return `The record of ${names[0]} comes later: another round asks about this muscle.`;
  return `The records of ${listed(names)} come later: other rounds ask about these muscles.`;
}

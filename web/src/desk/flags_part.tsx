import "./changes.css";
import type { Draft } from "../line/line";
import type { DeskItem, FlagText } from "../wire";
import { countOf } from "../words/numbers";

/** What players flagged at this item: how many and their words, never who. */
export function FlagsPart({ item, onOrder }: { item: DeskItem; onOrder: (draft: Draft) => void }) {
  const { up, waiting, texts } = item.flags;
  if (up === 0) return null;
  const settled = waiting === 0;
  const said = gathered(texts);
  return (
    <section class={settled ? "sheet_flags sheet_flags-settled" : "sheet_flags"} aria-label="Flags">
      <p>
        <span aria-hidden="true">⚑ </span>
        <b>{countOf(up, "flag")}</b>
        {settled ? ", settled" : waiting < up && `, ${waiting} not settled`}
      </p>
      {said.length === 1 && <FlagTexts said={said} />}
      {said.length > 1 && (
        <details class="sheet_flag_texts">
          <summary>What they say ({said.length})</summary>
          <FlagTexts said={said} />
        </details>
      )}
      <button
        class="button"
        type="button"
        onClick={() => onOrder({ type: "settle_flags", round: item.round, settled: !settled })}
      >
        {settled ? "Not settled" : "Settled"}
      </button>
    </section>
  );
}

interface Said {
  flag: FlagText;
  times: number;
}

function FlagTexts({ said }: { said: readonly Said[] }) {
  return (
    <ul class="sheet_flag_texts">
      {said.map(({ flag, times }, place) => (
        <li key={place} class={flag.settled ? "sheet_flag-settled" : undefined}>
          {flag.text && `“${flag.text}”`}
          {flag.asked && <span> in a second look at: {flag.asked}</span>}
          {times > 1 && <b> {times} times</b>}
        </li>
      ))}
    </ul>
  );
}

/** The same words, alike settled or not, once with how often they came. */
export function gathered(texts: readonly FlagText[]): Said[] {
  const found = new Map<string, Said>();
  for (const flag of texts) {
    const name = JSON.stringify([flag.text, flag.asked ?? "", flag.settled]);
    found.set(name, { flag, times: (found.get(name)?.times ?? 0) + 1 });
  }
  return [...found.values()];
}

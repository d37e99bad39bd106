import "./changes.css";
import type { Draft } from "../line/line";
import type { DeskItem } from "../wire";
import { countOf } from "../words/numbers";

/** What players flagged at this item: how many and their words, never who. */
export function FlagsPart({ item, onOrder }: { item: DeskItem; onOrder: (draft: Draft) => void }) {
  const { up, waiting, texts } = item.flags;
  if (up === 0) return null;
  const settled = waiting === 0;
  return (
    <section class={settled ? "sheet_flags sheet_flags-settled" : "sheet_flags"} aria-label="Flags">
      <p>
        <span aria-hidden="true">⚑ </span>
        <b>{countOf(up, "flag")}</b>
        {settled ? ", settled" : waiting < up && `, ${waiting} not settled`}
      </p>
      {texts.length > 0 && (
        <ul class="sheet_flag_texts">
          {texts.map((one, place) => (
            <li key={place} class={one.settled ? "sheet_flag-settled" : undefined}>
              {one.text && `“${one.text}”`}
              {one.asked && <span class="sheet_flag_asked"> in a second look at: {one.asked}</span>}
            </li>
          ))}
        </ul>
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

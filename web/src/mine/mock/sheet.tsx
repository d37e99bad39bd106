import { type Draft, draftText, isEmpty } from "../../seat/draft";
import { stationOf, type Walk } from "./walk";

/** The numbered answer sheet: what is written for each station so far. With `onOpen` each line can be opened. */
export function Sheet({ walk, onOpen }: { walk: Walk; onOpen?: (station: number) => void }) {
  const here = stationOf(walk);
  return (
    <ol class="sheet_lines">
      {walk.sheet.map((draft, station) => (
        <li
          key={station}
          class={station === here ? "sheet_line sheet_line-here" : "sheet_line"}
          aria-current={station === here ? "step" : undefined}
        >
          <span class="sheet_number">{station + 1}</span>
          {onOpen ? (
            <button class="sheet_open" type="button" onClick={() => onOpen(station)}>
              <span class="unseen">Station {station + 1}: </span>
              <LineText draft={draft} />
            </button>
          ) : (
            <span class="sheet_text">
              <LineText draft={draft} />
            </span>
          )}
        </li>
      ))}
    </ol>
  );
}

function LineText({ draft }: { draft: Draft }) {
  return isEmpty(draft) ? <span class="sheet_blank">blank</span> : <span>{draftText(draft)}</span>;
}

export function countWritten(walk: Walk): number {
  return walk.sheet.filter((draft) => !isEmpty(draft)).length;
}

import "../parts/rows.css";
import { PlaceText } from "../parts/place_rows";
import { RowLetter, rowClass } from "../parts/rows";
import { RowTurns } from "../parts/turns";
import type { DeskItem, SecondShare } from "../wire";
import { Bar, DeskRows, isTight, Share } from "./desk_rows";

/** What belongs where, why, and what was put there instead; below it the options that belong nowhere. */
export function DeskPlaceRows(props: { item: DeskItem; again?: readonly SecondShare[] | undefined }) {
  const { item, again } = props;
  const open = item.state !== "ahead";
  const beside = item.options.filter((option) => !option.is_key);
  return (
    <>
      <ol class={isTight(item) ? "rows rows-desk rows-tight" : "rows rows-desk"}>
        {item.rows.map((row, place) => (
          <li key={place} class={rowClass(true, false, again !== undefined)}>
            <RowLetter letter={row.letter} />
            <div class="row_box">
              <p class="row_text">
                <PlaceText row={row} place={place} />
                {row.letters.length > 0 && (
                  <span class="row_source">
                    instead: {row.letters.map(({ letter, count }) => `${letter} ${count}`).join(", ")}
                  </span>
                )}
              </p>
              {open && !again && <Share share={row.share} count={row.count} />}
              {again && <RowTurns first={row} second={again[place]} />}
              <p class="row_reason">{row.reason}</p>
              {open && !again && <Bar share={row.share} />}
            </div>
          </li>
        ))}
      </ol>
      {beside.length > 0 && <DeskRows item={{ ...item, options: beside, state: "ahead" }} />}
    </>
  );
}

import type { StandingRow } from "../wire";
import { marksText } from "../words/numbers";

const TOP = 8;

/** The upper part of the standings, by handle; nobody's last place is shown. */
export function WallStandings({ rows }: { rows: readonly StandingRow[] }) {
  return (
    <section class="standings">
      <h2 class="standings_heading">Standings</h2>
      <ol class="standings_list">
        {rows.slice(0, TOP).map((row) => (
          <li key={row.handle} class="standings_row">
            <span class="standings_place">{row.place}</span>
            <bdi class="standings_handle">{row.handle}</bdi>
            <span class="standings_marks">{marksText(row.marks)}</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

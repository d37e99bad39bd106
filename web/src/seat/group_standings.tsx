import "./group.css";
import type { StandingRow } from "../wire";
import { marksText } from "../words/numbers";

/** The standings of a group at its end: all of them, since a group is small and has chosen to see them. */
export function GroupStandings({ rows, own }: { rows: readonly StandingRow[]; own: string }) {
  return (
    <section>
      <h2 class="finished_heading">Standings</h2>
      <ol class="group_standings">
        {rows.map((row) => (
          <li key={row.handle}>
            <span class="group_place">{row.place}</span>
            <span class="group_handle">
              {row.handle === own ? (
                <b>
                  <bdi>{row.handle}</bdi> (you)
                </b>
              ) : (
                <bdi>{row.handle}</bdi>
              )}
            </span>
            <span>
              {marksText(row.marks)} of {row.of}
            </span>
          </li>
        ))}
      </ol>
    </section>
  );
}

import "./stations.css";
import type { PublicView } from "../wire";

type Stations = NonNullable<PublicView["stations"]>;

/** Where each bench is, by number: the items themselves are at the seats. */
export function WallStations({ stations }: { stations: Stations }) {
  return (
    <>
      <h1 class="stem wall_stem">
        {stations.over ? "All stations are done" : `Turn ${stations.turn} of ${stations.of}`}
      </h1>
      <p class="stations_note">
        {stations.over
          ? "Each item is shown with its result now."
          : "Answer at your seat; at the bell all benches move on."}
      </p>
      {!stations.over && stations.rows.length > 0 && (
        <table class="stations">
          <thead>
            <tr>
              <th scope="col">Bench</th>
              <th scope="col">Station</th>
              <th scope="col">next</th>
            </tr>
          </thead>
          <tbody>
            {stations.rows.map((row) => (
              <tr key={row.bench}>
                <th scope="row">
                  <bdi>{row.bench}</bdi>
                </th>
                <td class="stations_now">{row.item}</td>
                <td class="stations_next">{nextOf(row.item, stations)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}

function nextOf(item: number, stations: Stations): string {
  return stations.turn === stations.of ? "–" : String((item % stations.of) + 1);
}

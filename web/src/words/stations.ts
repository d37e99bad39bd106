import type { OwnView, PublicView } from "../wire";

type Stations = NonNullable<PublicView["stations"]>;

/** Which turn this is: "Stations · turn 2 of 6". */
export function turnTitle(stations: Stations): string {
  return stations.over ? "Stations · done" : `Stations · turn ${stations.turn} of ${stations.of}`;
}

/** What is said aloud when a turn begins, with the own station where there is one. */
export function turnText(stations: Stations, own: OwnView | null): string {
  if (stations.over) return "All stations are done. The results follow.";
  const here = own?.station ? ` You are at station ${own.station.number}.` : "";
  return `Turn ${stations.turn} of ${stations.of}.${here}`;
}

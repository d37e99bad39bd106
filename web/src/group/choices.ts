import { isWhole, timingFault } from "../parts/timing_field";
import type { BenchChoice, GroupSettings, OpenGroup } from "../wire";

/** What has been chosen so far for a group's review. Reading seconds of 0 mean: until all are ready. */
export interface Choices {
  course: string;
  rounds: number;
  timing: OpenGroup["timing"];
  seconds: number;
  reading: number;
  typed: boolean;
  standings: boolean;
  benches: BenchChoice | null;
  title: string;
  handle: string;
}

export const READING_TIMES = [30, 60, 90, 180, 0] as const;

export function firstChoices(settings: GroupSettings, handle: string): Choices {
  return {
    course: settings.courses[0]?.id ?? "",
    rounds: 10,
    timing: "computed",
    seconds: 45,
    reading: 90,
    typed: true,
    standings: true,
    benches: null,
    title: "",
    handle,
  };
}

/** What keeps the room from being opened, as a sentence; empty when nothing does. */
export function whatIsMissing(choices: Choices, settings: GroupSettings): string {
  if (choices.course === "") return "Choose a course list.";
  if (!isWhole(choices.rounds, 1, settings.most_rounds))
    return `Rounds: a number from 1 to ${settings.most_rounds}.`;
  const fault = timingFault(choices);
  if (fault) return fault;
  if (choices.handle.trim() === "") return "The handle is missing: choose any name.";
  return "";
}

/** The message that opens the room, without its id. */
export function orderOf(choices: Choices, seatKey: string, playerKey: string): Omit<OpenGroup, "id"> {
  return {
    type: "open_group",
    course: choices.course,
    rounds: choices.rounds,
    timing: choices.timing,
    seconds: choices.timing === "fixed" ? choices.seconds : 45,
    typed: choices.typed,
    standings: choices.standings,
    reading_seconds: choices.reading === 0 ? null : choices.reading,
    benches: choices.benches,
    title: choices.title.trim(),
    handle: choices.handle.trim(),
    seat_key: seatKey,
    player_key: playerKey,
  };
}

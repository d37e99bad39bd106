import { isWhole, timingFault } from "../parts/timing_field";
import type { BenchChoice, CourseLine, DeskSettings, PrepareReview } from "../wire";

/** What the host has chosen so far for a new review. */
export interface Plan {
  title: string;
  course: string;
  families: readonly string[];
  rounds: number;
  timing: PrepareReview["timing"];
  seconds: number;
  typed: boolean;
  standings: boolean;
  benches: BenchChoice | null;
  certainty: boolean;
  holds_results: boolean;
  /** Whether players may take more time by themselves where results are held. */
  players_take_time: boolean;
  /** The class roster by which it is for credit, or "". */
  roster: string;
}

export const MOST_ROUNDS = 60;

export function firstPlan(settings: DeskSettings): Plan {
  const course = settings.courses[0];
  return {
    title: "Class review",
    course: course?.id ?? "",
    families: familiesOf(settings, course),
    rounds: 10,
    timing: "computed",
    seconds: 45,
    typed: true,
    standings: false,
    benches: null,
    certainty: false,
    holds_results: false,
    players_take_time: true,
    roster: "",
  };
}

/** The families that a course list examines, in the order of the handbook. */
export function familiesOf(settings: DeskSettings, course: CourseLine | undefined): string[] {
  return settings.families.filter((family) => course?.families.includes(family));
}

/** The plan with another course list: its own families, all of them. */
export function withCourse(plan: Plan, settings: DeskSettings, id: string): Plan {
  const course = settings.courses.find((one) => one.id === id);
  return { ...plan, course: id, families: familiesOf(settings, course) };
}

export function withFamily(plan: Plan, family: string, on: boolean): Plan {
  const others = plan.families.filter((one) => one !== family);
  return { ...plan, families: on ? [...others, family] : others };
}

/** What keeps the plan from being dealt, as a sentence; empty when nothing does. */
export function whatIsWrong(plan: Plan): string {
  if (plan.course === "") return "Choose a course list.";
  if (plan.families.length === 0) return "Choose at least one family of items.";
  if (!isWhole(plan.rounds, 1, MOST_ROUNDS)) return `Rounds: a number from 1 to ${MOST_ROUNDS}.`;
  return timingFault(plan);
}

import { leftMs } from "../line/server_clock";
import type { DeskView, RosterRow } from "../wire";
import type { DeskAction } from "./orders";

/** A player who may still answer the closed round, and for how long. */
export interface StillTime {
  row: RosterRow;
  leftMs: number;
}

/** Who has time of their own left in the closed round and has not answered yet, the longest first. */
export function stillTime(view: DeskView, serverNow: number): StillTime[] {
  if (view.public.phase !== "closed" || view.public.result !== null) return [];
  return view.roster
    .filter((row) => row.clock !== null && !row.answered)
    .map((row) => ({ row, leftMs: leftMs(row.clock, serverNow) ?? 0 }))
    .filter((one) => one.leftMs > 0)
    .sort((one, other) => other.leftMs - one.leftMs);
}

/** Whether a step ends the time that single players still have. */
export function endsOwnTime(action: DeskAction): boolean {
  return ["let_talk", "show_result", "show_record", "open_round"].includes(action);
}

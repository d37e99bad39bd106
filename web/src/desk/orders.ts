import { complaintOf } from "../line/complaint";
import type { Draft, Line } from "../line/line";
import type { Store } from "../line/store";
import type { DeskView } from "../wire";
import { talkSeconds } from "./talk_time";

export type DeskAction = DeskView["actions"][number];

/** What a step of the review is called on its button. */
export function actionLabel(action: DeskAction, view: DeskView): string {
  switch (action) {
    case "open_door":
      return "Open the door";
    case "open_round":
      if (view.public.stations) return `Show item ${view.public.round + 1} with its result`;
      return `Open round ${view.public.round + 1}${nextTwin(view)}`;
    case "open_stations":
      return `Open ${view.items.filter((item) => item.state === "ahead").length} stations`;
    case "ring_bell":
      return bellLabel(view);
    case "close_round":
      return "Close the round";
    case "let_talk":
      return "Let them talk";
    case "open_again":
      return "Answer again now";
    case "close_again":
      return "Close the second answers";
    case "ask_twin":
      return "Put a twin item next";
    case "show_result":
      return "Show the result";
    case "show_record":
      return "Show the record";
    case "pause_round":
      return "Pause the clock";
    case "resume_round":
      return "Let the clock run";
    case "add_time":
      return `+ ${ADDED_SECONDS} s`;
    case "strike_item":
      return "Strike this item";
    case "restore_item":
      return "Let it count again";
    case "end_review":
      return "End the review";
  }
}

function bellLabel(view: DeskView): string {
  const { stations } = view.public;
  return stations && stations.turn < stations.of ? "Ring: all move on" : "Ring: the last turn ends";
}

/** Says so where the next item asks the fact of this round once more. */
function nextTwin(view: DeskView): string {
  const next = view.items.find((item) => item.position === 0);
  return next && typeof next.twin_of === "number" ? `, the twin of ${next.twin_of}` : "";
}

const ADDED_SECONDS = 15;

/** The message that carries a step out; it names the round it is meant for, so that a repeat does no harm. */
export function orderFor(action: DeskAction, view: DeskView, endsOwnTime = false): Draft {
  const draft = plainOrder(action, view);
  const ending = ["let_talk", "show_result", "show_record", "open_round", "end_review"];
  // the server refuses a step that ends the time of single players unless the host was asked
  return endsOwnTime && ending.includes(draft.type) ? ({ ...draft, ends_own_time: true } as Draft) : draft;
}

function plainOrder(action: DeskAction, view: DeskView): Draft {
  const round = view.public.round;
  switch (action) {
    case "add_time":
      return { type: "add_time", seconds: ADDED_SECONDS };
    case "strike_item":
    case "restore_item":
      return { type: action, round: Math.max(1, round) };
    case "let_talk":
      return { type: "let_talk", round, seconds: talkSeconds.get() };
    case "open_round":
    case "open_stations":
      return { type: action, round: round + 1 };
    case "ring_bell":
      return { type: action, round: view.public.stations?.turn ?? 0 };
    default:
      return { type: action, round };
  }
}

/** Says an order and keeps the server's sentence when it could not be carried out. */
export async function order(line: Line, complaint: Store<string>, draft: Draft): Promise<boolean> {
  const reply = await line.say(draft);
  complaint.set(complaintOf(reply));
  return reply.result === "done";
}

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
      return `Open round ${view.public.round + 1}${nextTwin(view)}`;
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

/** Says so where the next item asks the fact of this round once more. */
function nextTwin(view: DeskView): string {
  const next = view.items.find((item) => item.position === 0);
  return next && typeof next.twin_of === "number" ? `, the twin of ${next.twin_of}` : "";
}

export const ADDED_SECONDS = 15;

/** The message that carries a step out; it names the round it is meant for, so that a repeat does no harm. */
export function orderFor(action: DeskAction, view: DeskView): Draft {
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
      return { type: "open_round", round: round + 1 };
    default:
      return { type: action, round };
  }
}

/** Says an order and keeps the server's sentence when it could not be carried out. */
export async function order(line: Line, complaint: Store<string>, draft: Draft): Promise<boolean> {
  const reply = await line.say(draft);
  complaint.set(reply.result === "done" ? "" : (reply.text ?? ""));
  return reply.result === "done";
}

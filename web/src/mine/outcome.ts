import type { Draft } from "../seat/draft";
import type { Look, LookAnswer, LookOutcome } from "../wire";
import { dayText } from "../words/dates";
import { marksWord } from "../words/numbers";
import { judged } from "./judge";
import type { Given } from "./look_box";

type Verdict = LookOutcome["verdict"];

const LOOK_WORD: Record<Verdict, string> = {
  right: "right",
  part: "part right",
  wrong: "wrong",
  doubtful: "doubtful",
  none: "no answer",
};

export const LOOK_MARK: Record<Verdict, string> = {
  right: "✓",
  part: "◐",
  wrong: "✕",
  doubtful: "?",
  none: "–",
};

/** What is known of an answer now: from the server, else by the page's own marking; null while only the
 * server can tell. */
export interface Known {
  verdict: Verdict;
  mark: number;
  because: string;
  /** The day on which it is asked again, in words; "" as long as the server has not said. */
  due: string;
}

export function knownOf(look: Look, given: Given): Known | null {
  const { outcome } = given;
  if (outcome !== null) return { ...outcome, due: outcome.due === null ? "" : dayText(outcome.due) };
  const own = judged(look, draftOf(given.answer));
  return own === null ? null : { ...own, because: "", due: "" };
}

function draftOf(answer: LookAnswer): Draft {
  return { choice: answer.choice, typed: answer.typed };
}

/** "right · 1 mark". */
export function verdictText(known: Known): string {
  const counted = known.verdict !== "doubtful" && known.verdict !== "none";
  return LOOK_WORD[known.verdict] + (counted ? ` · ${marksWord(known.mark)}` : "");
}

/** The answer in words: the chosen options, rows with theirs, or what was typed. */
export function answerWords(look: Look, answer: LookAnswer): string[] {
  const { face } = look;
  const texts = new Map(face.options.map((option) => [option.letter, option.text]));
  const chosen = answer.choice.map((letter) => texts.get(letter) ?? "–");
  const rows = face.stems.length > 0 ? chosen.map((text, row) => `${face.stems[row]}: ${text}`) : chosen;
  return [...rows, ...answer.typed];
}

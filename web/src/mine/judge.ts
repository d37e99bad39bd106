import { type Draft, isEmpty, written } from "../seat/draft";
import type { Look, LookOutcome } from "../wire";
import { comparable } from "./terms";

/** What an answer is worth, as far as the page itself can tell. */
export interface Judged {
  verdict: LookOutcome["verdict"];
  /** 0 to 1. */
  mark: number;
}

/** Marks an answer by the server's rules; null where typed words are in doubt and the server has to judge. */
export function judged(look: Look, draft: Draft): Judged | null {
  if (isEmpty(draft)) return { verdict: "none", mark: 0 };
  const mark = markOf(look, draft);
  return mark === null ? null : verdictOf(mark);
}

function markOf(look: Look, draft: Draft): number | null {
  const { key } = look.solution;
  switch (look.face.format) {
    case "one_best":
      return draft.choice[0] === key[0] ? 1 : 0;
    case "pick_n": {
      const hits = draft.choice.filter((letter) => key.includes(letter)).length;
      return Math.max(0, (hits - (draft.choice.length - hits)) / look.face.pick);
    }
    case "ordering":
      return markOfOrder(key, draft.choice);
    case "matching":
      return key.filter((letter, row) => draft.choice[row] === letter).length / key.length;
    case "typed":
    case "free_list":
      return markOfWords(look, written(draft));
  }
}

/** Kendall's tau (1938) between two orders of the same letters, never below 0. */
function markOfOrder(right: readonly string[], given: readonly string[]): number {
  const places = given.map((letter) => right.indexOf(letter));
  let pairs = 0;
  let turned = 0;
  for (let one = 0; one < places.length; one++)
    for (let other = one + 1; other < places.length; other++) {
      pairs += 1;
      if ((places[one] ?? 0) > (places[other] ?? 0)) turned += 1;
    }
  return pairs === 0 ? 0 : Math.max(0, (pairs - 2 * turned) / pairs);
}

/** Only if every term is exactly one of those that count; names of the same thing count once. */
function markOfWords(look: Look, words: readonly string[]): number | null {
  const meant = words.map((word) => conceptOf(look, word));
  if (meant.includes(-1)) return null;
  return Math.min(1, new Set(meant).size / look.face.pick);
}

function conceptOf(look: Look, word: string): number {
  const typed = comparable(word);
  return look.solution.accepted.findIndex(({ terms }) => terms.some((term) => comparable(term) === typed));
}

function verdictOf(mark: number): Judged {
  return { mark, verdict: mark >= 1 ? "right" : mark > 0 ? "part" : "wrong" };
}

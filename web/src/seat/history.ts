import { lastingShelf } from "../line/memory";
import type { ItemFace, OwnView, PublicView } from "../wire";

/** A closed round as this seat has seen it: what was asked, the key, one's own answer. */
export interface PastRound {
  round: number;
  stem: string;
  key: string[];
  /** How many of the key's terms were asked for. */
  pick: number;
  answer: string[];
}

/** The round that these views have closed, if they have. */
export function closedRound(view: PublicView, own: OwnView | null): PastRound | null {
  if (view.item === null || view.result === null) return null;
  const answer = own?.answer?.round === view.round ? own.answer : null;
  const texts = answer === null ? [] : answerTexts(view.item, answer.choice);
  return {
    round: view.round,
    stem: view.item.stem,
    key: view.result.key_text,
    pick: view.item.pick,
    answer: [...texts, ...(answer?.typed ?? [])],
  };
}

/** The chosen options in words; of an ordering in the player's order, of a matching row by row. */
export function answerTexts(item: ItemFace, choice: readonly string[]): string[] {
  const texts = new Map(item.options.map((option) => [option.letter, option.text]));
  const chosen = choice.map((letter) => texts.get(letter) ?? "–");
  return item.stems.length === 0 ? chosen : chosen.map((text, row) => `${item.stems[row]}: ${text}`);
}

/** The rounds so far with this one put in its place. */
export function withRound(past: readonly PastRound[], next: PastRound): PastRound[] {
  return [...past.filter((one) => one.round !== next.round), next].sort((a, b) => a.round - b.round);
}

export function keptRounds(doorCode: string): PastRound[] {
  try {
    const found: unknown = JSON.parse(lastingShelf().getItem(shelfName(doorCode)) ?? "[]");
    return Array.isArray(found) ? (found as PastRound[]) : [];
  } catch {
    return [];
  }
}

export function keepRounds(doorCode: string, past: readonly PastRound[]): void {
  lastingShelf().setItem(shelfName(doorCode), JSON.stringify(past));
}

function shelfName(doorCode: string): string {
  return `quizroom.rounds.${doorCode}`;
}

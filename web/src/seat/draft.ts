import { useState } from "preact/hooks";
import { lastingShelf } from "../line/memory";
import type { AnswerFace, ItemFace } from "../wire";

/** What the player has chosen or typed so far, handed in or not. */
export interface Draft {
  choice: readonly string[];
  typed: readonly string[];
}

/** The draft of a round; it begins with what was left unfinished here, else with what was handed in before. */
export function useDraft(
  item: ItemFace,
  known: AnswerFace | null,
  doorCode: string,
): [Draft, (next: Draft) => void] {
  const [kept, keep] = useState<KeptDraft | null>(() => keptDraft(doorCode));
  const draft = kept?.round === item.round ? kept : (known ?? EMPTY);
  const change = (next: Draft) => {
    const changed = { choice: next.choice, typed: next.typed, round: item.round };
    keep(changed);
    lastingShelf().setItem(shelfName(doorCode), JSON.stringify(changed));
  };
  return [draft, change];
}

interface KeptDraft extends Draft {
  round: number;
}

function shelfName(doorCode: string): string {
  return `quizroom.draft.${doorCode}`;
}

function keptDraft(doorCode: string): KeptDraft | null {
  try {
    const found = JSON.parse(lastingShelf().getItem(shelfName(doorCode)) ?? "null") as KeptDraft | null;
    return Array.isArray(found?.choice) && Array.isArray(found.typed) ? found : null;
  } catch {
    return null;
  }
}

const EMPTY: Draft = { choice: [], typed: [] };

export function sameDraft(one: Draft, other: Draft | null): boolean {
  return (
    other !== null &&
    JSON.stringify([...one.choice].sort()) === JSON.stringify([...other.choice].sort()) &&
    JSON.stringify(written(one)) === JSON.stringify(written(other))
  );
}

export function isEmpty(draft: Draft): boolean {
  return draft.choice.length === 0 && written(draft).length === 0;
}

/** The typed words without blanks: empty lines are not part of the answer. */
export function written(draft: Draft): string[] {
  return draft.typed.map((text) => text.trim().replace(/\s+/g, " ")).filter((text) => text !== "");
}

/** The choice with this letter taken or taken back; where one is asked for, it replaces the other. */
export function withLetter(draft: Draft, letter: string, item: ItemFace): Draft {
  if (item.format === "one_best") return { ...draft, choice: [letter] };
  const rest = draft.choice.filter((one) => one !== letter);
  if (rest.length < draft.choice.length) return { ...draft, choice: rest };
  return rest.length < item.pick ? { ...draft, choice: [...rest, letter].sort() } : draft;
}

/** The answer in words: "B", "A, C and D", or what was typed. */
export function draftText(draft: Draft): string {
  return draft.choice.length > 0 ? draft.choice.join(", ") : written(draft).join(", ");
}

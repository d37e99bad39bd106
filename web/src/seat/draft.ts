import { useState } from "preact/hooks";
import { lastingShelf } from "../line/memory";
import type { AnswerFace, ItemFace } from "../wire";

/** What the player has chosen or typed so far, handed in or not. */
export interface Draft {
  choice: readonly string[];
  typed: readonly string[];
  /** How certain, where that is asked for. */
  certainty?: AnswerFace["certainty"];
}

/** The draft of a round; it begins with what was left unfinished here, else with what was handed in before. */
export function useDraft(
  item: ItemFace,
  known: AnswerFace | null,
  doorCode: string,
  again = false,
): [Draft, (next: Draft) => void] {
  const [kept, keep] = useState<KeptDraft | null>(() => keptDraft(doorCode));
  const isOfThis = kept?.round === item.round && Boolean(kept.again) === again;
  const draft = isOfThis ? kept : (known ?? EMPTY);
  const change = (next: Draft) => {
    const changed = { ...next, round: item.round, ...(again && { again }) };
    keep(changed);
    lastingShelf().setItem(shelfName(doorCode), JSON.stringify(changed));
  };
  return [draft, change];
}

interface KeptDraft extends Draft {
  round: number;
  again?: boolean;
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

/** Whether it matters at which place a letter stands. */
function isPlaced(item: ItemFace): boolean {
  return item.format === "ordering" || item.format === "matching";
}

/** What is on the page before anything is changed: an ordering begins with all its letters. */
export function shownDraft(item: ItemFace, draft: Draft): Draft {
  if (item.format !== "ordering" || draft.choice.length > 0) return draft;
  return { ...draft, choice: item.options.map((option) => option.letter), typed: [] };
}

export function sameDraft(item: ItemFace, one: Draft, other: Draft | null): boolean {
  const letters = (draft: Draft) => (isPlaced(item) ? draft.choice : [...draft.choice].sort());
  return (
    other !== null &&
    JSON.stringify(letters(one)) === JSON.stringify(letters(other)) &&
    JSON.stringify(written(one)) === JSON.stringify(written(other)) &&
    (one.certainty ?? null) === (other.certainty ?? null)
  );
}

export function isEmpty(draft: Draft): boolean {
  return draft.choice.every((letter) => letter === "") && written(draft).length === 0;
}

/** The order with this letter one place further up (-1) or down (1), as far as there is a place. */
export function withMoved(draft: Draft, letter: string, step: -1 | 1): Draft {
  const from = draft.choice.indexOf(letter);
  const other = draft.choice[from + step];
  if (other === undefined) return draft;
  const swapped = new Map([
    [letter, other],
    [other, letter],
  ]);
  return { ...draft, choice: draft.choice.map((one) => swapped.get(one) ?? one) };
}

/** The rows with this letter in one of them; "" takes it back. */
export function withRow(draft: Draft, item: ItemFace, place: number, letter: string): Draft {
  return {
    ...draft,
    choice: item.stems.map((_, row) => (row === place ? letter : (draft.choice[row] ?? ""))),
  };
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

/** The answer in words: "B", "A, C", "B, –, A" for rows, or what was typed. */
export function draftText(draft: Draft): string {
  const letters = draft.choice.map((letter) => letter || "–");
  return letters.length > 0 ? letters.join(", ") : written(draft).join(", ");
}

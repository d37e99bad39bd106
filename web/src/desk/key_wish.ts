import type { Draft } from "../line/line";
import type { DeskItem } from "../wire";

/** What the host would key: letters as the item's key holds them, or the terms that count, one a line. */
export interface KeyWish {
  key: readonly string[];
  terms: string;
  reason: string;
}

/** The key as it is now. */
export function wishOf(item: DeskItem): KeyWish {
  return { key: item.key, terms: item.options.length === 0 ? item.key_text.join("\n") : "", reason: "" };
}

export function isInPlaces(item: DeskItem): boolean {
  return item.format === "ordering" || item.format === "matching";
}

export function withLetter(wish: KeyWish, letter: string): KeyWish {
  const key = wish.key.includes(letter)
    ? wish.key.filter((other) => other !== letter)
    : [...wish.key, letter].sort();
  return { ...wish, key };
}

/** A row of a matching gets this letter; at a place of an ordering it changes places with the one that stood there. */
export function withPlace(item: DeskItem, wish: KeyWish, place: number, letter: string): KeyWish {
  const before = wish.key[place];
  const key = wish.key.map((known, at) => {
    if (at === place) return letter;
    return item.format === "ordering" && known === letter && before !== undefined ? before : known;
  });
  return { ...wish, key };
}

export function keyDraft(item: DeskItem, wish: KeyWish): Draft {
  const terms = wish.terms.split("\n").filter((term) => term.trim() !== "");
  return {
    type: "rekey_item",
    round: item.round,
    key: [...wish.key],
    terms,
    reason: wish.reason,
  };
}

/** What is amiss, in a sentence that says what to do; "" if it can be keyed so. */
export function faultOf(item: DeskItem, wish: KeyWish): string {
  if (isInPlaces(item)) return "";
  const said =
    item.options.length > 0 ? wish.key.length : wish.terms.split("\n").filter((t) => t.trim()).length;
  if (said >= item.pick) return "";
  return `Key at least ${item.pick}, since so many were asked for. Is none right? Then strike the item.`;
}

import { lastingShelf } from "../line/memory";

const NAME = "quizroom.own_key";
const LETTERS = "abcdefghijklmnopqrstuvwxyz234567";
const KEY = /^[a-z2-7]{16}$/;

/** The player's own key: from the private link if one was opened, else the one kept here, else a new one. */
export function ownKey(): string {
  const linked = location.hash.slice(1);
  if (KEY.test(linked)) {
    lastingShelf().setItem(NAME, linked);
    history.replaceState(null, "", location.pathname);
    return linked;
  }
  const kept = lastingShelf().getItem(NAME);
  if (kept !== null && KEY.test(kept)) return kept;
  const made = Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => LETTERS[byte % 32]).join("");
  lastingShelf().setItem(NAME, made);
  return made;
}

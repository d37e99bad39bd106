import { lastingShelf } from "./memory";
import type { Shelf } from "./outbox";

/** A player's own key: 80 random bits in base32 (RFC 4648), which this browser makes and keeps. */
export type OwnKey = string;

const NAME = "quizroom.own_key";
const BEFORE = "quizroom.own_key.before";
const CHOICE = "quizroom.keep_results";
const LETTERS = "abcdefghijklmnopqrstuvwxyz234567";
const KEY = /^[a-z2-7]{16}$/;

/** The key that is kept here, else a new one. */
export function ownKey(shelf: Shelf = lastingShelf()): OwnKey {
  return keptKey(shelf) ?? keepKey(newKey(), shelf);
}

/** The key that is kept here; null if this browser has none yet. */
export function keptKey(shelf: Shelf = lastingShelf()): OwnKey | null {
  const kept = shelf.getItem(NAME);
  return kept !== null && KEY.test(kept) ? kept : null;
}

/** Keeps this key from now on. Another one that was here can be taken back: nothing is lost by a stranger's link. */
export function keepKey(key: OwnKey, shelf: Shelf = lastingShelf()): OwnKey {
  const before = keptKey(shelf);
  if (before !== null && before !== key) shelf.setItem(BEFORE, before);
  shelf.setItem(NAME, key);
  return key;
}

/** The key that was here before another one came by a link or a phrase. */
export function keyBefore(shelf: Shelf = lastingShelf()): OwnKey | null {
  const before = shelf.getItem(BEFORE);
  return before !== null && KEY.test(before) && before !== keptKey(shelf) ? before : null;
}

/** Forgets the key on this device, and the one before it. */
export function dropKeys(shelf: Shelf = lastingShelf()): void {
  shelf.removeItem(NAME);
  shelf.removeItem(BEFORE);
}

/** The key of a private link that was opened, taken out of the address so that nobody reads it there. */
export function takeLinkedKey(): OwnKey | null {
  const linked = location.hash.slice(1);
  if (!KEY.test(linked)) return null;
  history.replaceState(history.state, "", location.pathname + location.search);
  return linked;
}

/** The private link; after "#", so that no server and no log ever sees the key. */
export function privateLink(key: OwnKey, origin: string): string {
  return `${origin}/mine#${key}`;
}

/** The key in what somebody typed or pasted: a private link or the bare key; null if there is none. */
export function keyInLink(typed: string): OwnKey | null {
  const bare = typed.trim().replace(/^.*#/, "");
  return KEY.test(bare) ? bare : null;
}

/** Whether results are to be kept for a second look; they are, unless this browser's owner refused. */
export function keepsResults(shelf: Shelf = lastingShelf()): boolean {
  return shelf.getItem(CHOICE) !== "no";
}

export function setKeepsResults(keeps: boolean, shelf: Shelf = lastingShelf()): void {
  shelf.setItem(CHOICE, keeps ? "yes" : "no");
}

/** What to send with a seat: the key, or nothing for one who does not want to be kept. */
export function keyForSeat(shelf: Shelf = lastingShelf()): OwnKey | "" {
  return keepsResults(shelf) ? ownKey(shelf) : "";
}

/** The 10 bytes that a key stands for. */
export function bytesOf(key: OwnKey): Uint8Array {
  const bytes = new Uint8Array(10);
  for (const [place, letter] of [...key].entries()) {
    const value = LETTERS.indexOf(letter);
    for (let bit = 0; bit < 5; bit += 1) {
      const at = place * 5 + bit;
      if ((value >> (4 - bit)) & 1) bytes[at >> 3] = (bytes[at >> 3] ?? 0) | (0x80 >> (at & 7));
    }
  }
  return bytes;
}

/** The key that stands for 10 bytes. */
export function keyOf(bytes: Uint8Array): OwnKey {
  const bits = Array.from(bytes, (byte) => byte.toString(2).padStart(8, "0")).join("");
  return (bits.match(/.{5}/g) ?? []).map((five) => LETTERS[Number.parseInt(five, 2)]).join("");
}

function newKey(): OwnKey {
  return keyOf(crypto.getRandomValues(new Uint8Array(10)));
}

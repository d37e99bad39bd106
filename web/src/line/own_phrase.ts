import { sha256 } from "@noble/hashes/sha2.js";
import { wordlist } from "@scure/bip39/wordlists/english.js";
import { bytesOf, keyOf, type OwnKey } from "./own_key";

/** How many words a recovery phrase has: 80 bits of the key and 8 bits of check, 11 bits a word. */
export const PHRASE_WORDS = 8;

const BITS_A_WORD = 11;
const SHORTEST_START = 4;

export type Read =
  | { kind: "key"; key: OwnKey }
  | { kind: "too few"; words: number }
  | { kind: "unknown"; word: string }
  | { kind: "mistaken" };

/** The key as words of the English list of BIP-39 (Bitcoin Improvement Proposal 39); the list is theirs, the form is not. */
export function phraseOf(key: OwnKey): string[] {
  const bits = bitsOf([...bytesOf(key), checkOf(bytesOf(key))]);
  return Array.from(
    { length: PHRASE_WORDS },
    (_, place) =>
      wordlist[Number.parseInt(bits.slice(place * BITS_A_WORD, (place + 1) * BITS_A_WORD), 2)] ?? "",
  );
}

/** The key of a phrase as people type it: case and spaces do not matter, four letters of a word are enough. */
export function readPhrase(typed: string): Read {
  const words = typed.toLowerCase().match(/[a-z]+/g) ?? [];
  if (words.length !== PHRASE_WORDS) return { kind: "too few", words: words.length };
  const places = words.map(placeOf);
  const unknown = places.indexOf(-1);
  if (unknown >= 0) return { kind: "unknown", word: words[unknown] ?? "" };
  const bits = places.map((place) => place.toString(2).padStart(BITS_A_WORD, "0")).join("");
  const bytes = Uint8Array.from(bits.match(/.{8}/g) ?? [], (eight) => Number.parseInt(eight, 2));
  const key = bytes.slice(0, -1);
  return checkOf(key) === bytes.at(-1) ? { kind: "key", key: keyOf(key) } : { kind: "mistaken" };
}

/** No two words of the list share their first four letters (BIP-39), so those are enough. */
function placeOf(word: string): number {
  const whole = wordlist.indexOf(word);
  if (whole >= 0 || word.length < SHORTEST_START) return whole;
  return wordlist.findIndex(
    (known) => known.slice(0, SHORTEST_START) === word.slice(0, SHORTEST_START) && known.startsWith(word),
  );
}

function checkOf(bytes: Uint8Array): number {
  return sha256(bytes)[0] ?? 0;
}

function bitsOf(bytes: readonly number[]): string {
  return bytes.map((byte) => byte.toString(2).padStart(8, "0")).join("");
}

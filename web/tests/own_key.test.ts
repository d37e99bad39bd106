// @vitest-environment happy-dom
import { sha256 } from "@noble/hashes/sha2.js";
import { wordlist } from "@scure/bip39/wordlists/english.js";
import { describe, expect, test } from "vitest";
import { memoryShelf } from "../src/line/memory";
import {
  bytesOf,
  dropKeys,
  keepKey,
  keepsResults,
  keptKey,
  keyBefore,
  keyForSeat,
  keyInLink,
  keyOf,
  ownKey,
  privateLink,
  setKeepsResults,
  takeLinkedKey,
} from "../src/line/own_key";
import { PHRASE_WORDS, phraseOf, readPhrase } from "../src/line/own_phrase";

const KEY = "mzxw6ytbmzxw6ytb";
const OTHER = "abcdefghijklmn27";

describe("a player's own key", () => {
  test("is base32 as in RFC 4648, section 10: 'fooba' is MZXW6YTB", () => {
    const bytes = new TextEncoder().encode("foobafooba");
    expect(keyOf(bytes)).toBe(KEY);
    expect([...bytesOf(KEY)]).toEqual([...bytes]);
  });

  test("is made once and kept, and differs from browser to browser", () => {
    const shelf = memoryShelf();
    expect(keptKey(shelf)).toBeNull();
    const made = ownKey(shelf);
    expect(made).toMatch(/^[a-z2-7]{16}$/);
    expect(ownKey(shelf)).toBe(made);
    expect(ownKey(memoryShelf())).not.toBe(made);
  });

  test("uses all 80 bits: over many keys every place has every letter", () => {
    const seen = Array.from({ length: 16 }, () => new Set<string>());
    for (let n = 0; n < 1500; n += 1)
      for (const [at, c] of [...ownKey(memoryShelf())].entries()) seen[at]?.add(c);
    expect(seen.map((letters) => letters.size)).toEqual(Array(16).fill(32));
  });

  test("gives way to that of a link, and can be taken back", () => {
    const shelf = memoryShelf();
    keepKey(KEY, shelf);
    keepKey(OTHER, shelf);
    expect([keptKey(shelf), keyBefore(shelf)]).toEqual([OTHER, KEY]);
    keepKey(KEY, shelf);
    expect([keptKey(shelf), keyBefore(shelf)]).toEqual([KEY, OTHER]);
    dropKeys(shelf);
    expect([keptKey(shelf), keyBefore(shelf)]).toEqual([null, null]);
  });

  test("stands after # in the private link and leaves the address when the link is opened", () => {
    const link = privateLink(KEY, "http://192.0.2.7:8000");
    expect(link).toBe(`http://192.0.2.7:8000/mine#${KEY}`);
    expect(keyInLink(` ${link} `)).toBe(KEY);
    expect(keyInLink(KEY)).toBe(KEY);
    expect(keyInLink("http://192.0.2.7:8000/mine")).toBeNull();
    location.hash = KEY;
    expect(takeLinkedKey()).toBe(KEY);
    expect(location.hash).toBe("");
    location.hash = "look";
    expect(takeLinkedKey()).toBeNull();
    expect(location.hash).toBe("#look");
  });

  test("goes with a seat unless its owner refused", () => {
    const shelf = memoryShelf();
    expect(keepsResults(shelf)).toBe(true);
    expect(keyForSeat(shelf)).toBe(ownKey(shelf));
    setKeepsResults(false, shelf);
    expect(keyForSeat(shelf)).toBe("");
    setKeepsResults(true, shelf);
    expect(keyForSeat(shelf)).toBe(ownKey(shelf));
  });

  test("is not even made for one who refused from the start", () => {
    const shelf = memoryShelf();
    setKeepsResults(false, shelf);
    expect(keyForSeat(shelf)).toBe("");
    expect(keptKey(shelf)).toBeNull();
  });
});

describe("the recovery phrase", () => {
  test("takes its words from the English list as BIP-39 publishes it", () => {
    // SHA-256 of bip-0039/english.txt in the repository of the Bitcoin Improvement Proposals, from memory.
    const published = "2f5eed53a4727b4bf8880d8f3f199efc90e58503646d9ff8eff3a2ed3b24dbda";
    const hash = sha256(new TextEncoder().encode(`${wordlist.join("\n")}\n`));
    expect(Array.from(hash, (byte) => byte.toString(16).padStart(2, "0")).join("")).toBe(published);
    expect(new Set(wordlist.map((word) => word.slice(0, 4))).size).toBe(2048);
  });

  test("is eight words that give the same key again, however they are typed", () => {
    for (const key of [KEY, OTHER, "aaaaaaaaaaaaaaaa", "7777777777777777", ownKey(memoryShelf())]) {
      const words = phraseOf(key);
      expect(words).toHaveLength(PHRASE_WORDS);
      expect(readPhrase(words.join(" "))).toEqual({ kind: "key", key });
      expect(readPhrase(` 1. ${words.join(",\n").toUpperCase()} `)).toEqual({ kind: "key", key });
      expect(readPhrase(words.map((word) => word.slice(0, 4)).join(" "))).toEqual({ kind: "key", key });
    }
  });

  test("of nothing but zeros is as worked out by hand", () => {
    // SHA-256 of ten zero bytes begins with 01 (hex); so do the last eleven bits hold 0000 0000 001.
    expect(sha256(new Uint8Array(10))[0]).toBe(0x01);
    expect(phraseOf("aaaaaaaaaaaaaaaa")).toEqual([...Array(7).fill("abandon"), "ability"]);
  });

  test("says what is wrong with it", () => {
    const words = phraseOf(KEY);
    expect(readPhrase(words.slice(1).join(" "))).toEqual({ kind: "too few", words: 7 });
    expect(readPhrase(["humerus", ...words.slice(1)].join(" "))).toEqual({
      kind: "unknown",
      word: "humerus",
    });
  });

  test("notices nearly every wrong word: the check has eight bits", () => {
    const words = phraseOf(KEY);
    const others = wordlist.filter((word) => word !== words[2]);
    const missed = others.filter((word) => readPhrase(words.with(2, word).join(" ")).kind === "key");
    expect(missed.length / others.length).toBeLessThan(0.02);
    expect(others.length - missed.length).toBeGreaterThan(2000);
  });
});

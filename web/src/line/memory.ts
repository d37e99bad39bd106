import type { Shelf } from "./outbox";
import { randomHex } from "./random";

/** What this browser remembers of a seat: the key that proves it, the handle last used. */
export interface SeatMemory {
  keyFor(doorCode: string): string | null;
  makeKey(doorCode: string): string;
  /** Keeps the key of a seat that was taken before its door code was known. */
  keepKey(doorCode: string, key: string): void;
  forget(doorCode: string): void;
  handle(): string;
  keepHandle(handle: string): void;
}

/** Set by the front page: who has given a handle there need not give it again. */
export const ENTER_AT_ONCE = "quizroom.enter";

const KEY_BYTES = 32;
const HANDLE = "quizroom.handle";

export function makeSeatMemory(shelf: Shelf): SeatMemory {
  const name = (doorCode: string) => `quizroom.seat.${doorCode}`;
  return {
    keyFor: (doorCode) => shelf.getItem(name(doorCode)),
    makeKey(doorCode) {
      const key = newSeatKey();
      this.keepKey(doorCode, key);
      return key;
    },
    keepKey(doorCode, key) {
      // a new seat: what is left of an older room with the same code must not get into this one
      for (const kind of ["outbox", "draft", "rounds"]) shelf.removeItem(`quizroom.${kind}.${doorCode}`);
      shelf.setItem(name(doorCode), key);
    },
    forget: (doorCode) => shelf.removeItem(name(doorCode)),
    handle: () => shelf.getItem(HANDLE) ?? "",
    keepHandle: (handle) => shelf.setItem(HANDLE, handle),
  };
}

/** A key that nobody can guess and that proves a seat. */
export function newSeatKey(): string {
  return randomHex(KEY_BYTES);
}

/** The browser's lasting shelf, or one in memory where the browser refuses it. */
export function lastingShelf(): Shelf {
  try {
    localStorage.setItem("quizroom.try", "1");
    localStorage.removeItem("quizroom.try");
    return localStorage;
  } catch {
    return memoryShelf();
  }
}

export function memoryShelf(): Shelf {
  const kept = new Map<string, string>();
  return {
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, text) => void kept.set(name, text),
    removeItem: (name) => void kept.delete(name),
  };
}

/** The door code as people may type it: small letters and spaces are forgiven. */
export function tidyDoorCode(raw: string): string {
  return raw.toUpperCase().replace(/[^A-Z0-9]/g, "");
}

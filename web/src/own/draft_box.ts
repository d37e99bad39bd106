import type { Own } from "./written";

const PREFIX = "own-item ";

/** What was written and not saved yet, kept in this browser so that a closed window loses nothing. */
export const draftBox = {
  keep(id: string, own: Own): void {
    try {
      localStorage.setItem(PREFIX + id, JSON.stringify(own));
    } catch {
      // a browser that keeps nothing: the form still holds it
    }
  },
  find(id: string): Own | null {
    try {
      return JSON.parse(localStorage.getItem(PREFIX + id) ?? "null") as Own | null;
    } catch {
      return null;
    }
  },
  drop(id: string): void {
    try {
      localStorage.removeItem(PREFIX + id);
    } catch {
      // nothing was kept
    }
  },
};

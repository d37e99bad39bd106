const FILLERS = new Set(["muscle", "muscles", "m", "mm", "musculus", "musculi", "the"]);

/** A typed term made comparable. Stricter than the server, which also takes plurals and misspellings:
 * what is equal here is right there, and what is not is left to it. */
export function comparable(term: string): string {
  const plain = term
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/['\u2019]/g, "");
  const words = plain.match(/[\p{L}\p{N}]+/gu) ?? [];
  const kept = words.filter((word) => !FILLERS.has(word));
  return (kept.length > 0 ? kept : words).join(" ");
}

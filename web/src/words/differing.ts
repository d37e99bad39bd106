/** A stretch of an option's text; `differs` is set on what tells it from the others. */
export interface Stretch {
  text: string;
  differs: boolean;
}

const SMALL_WORDS = new Set([
  "a",
  "an",
  "and",
  "at",
  "by",
  "for",
  "in",
  "into",
  "of",
  "on",
  "or",
  "the",
  "to",
  "with",
]);

/** Splits each option into stretches so that what differs between look-alikes can be set bold.
 *
 * Words that all options share stay plain. Options without a shared word of weight are left whole:
 * everything would be bold. */
export function differingParts(texts: readonly string[]): Stretch[][] {
  const shared = sharedWords(texts);
  const worthIt = texts.length > 1 && [...shared].some((word) => !SMALL_WORDS.has(word));
  if (!worthIt) return texts.map((text) => [{ text, differs: false }]);
  return texts.map((text) => stretches(text, shared));
}

function sharedWords(texts: readonly string[]): Set<string> {
  const [first, ...others] = texts.map((text) => new Set(words(text)));
  return new Set([...(first ?? [])].filter((word) => others.every((one) => one.has(word))));
}

function words(text: string): string[] {
  return text
    .split(/\s+/)
    .map(bareWord)
    .filter((word) => word !== "");
}

function bareWord(word: string): string {
  return word.toLowerCase().replace(/[^\p{L}\p{N}-]/gu, "");
}

function stretches(text: string, shared: ReadonlySet<string>): Stretch[] {
  const found: Stretch[] = [];
  for (const piece of text.split(/(\s+)/)) {
    const word = bareWord(piece);
    const last = found.at(-1);
    const joins = word === "" || SMALL_WORDS.has(word);
    const differs = joins ? (last?.differs ?? false) && word === "" : !shared.has(word);
    if (last && last.differs === differs) last.text += piece;
    else if (piece !== "") found.push({ text: piece, differs });
  }
  return found;
}

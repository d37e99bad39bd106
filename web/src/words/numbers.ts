/** Marks as people write them: "7", "2.33"; thirds of a mark are cut to two places. */
export function marksText(marks: number): string {
  return String(Math.round(marks * 100) / 100);
}

/** "1 mark", "0.67 marks". */
export function marksWord(marks: number): string {
  return `${marksText(marks)} ${marks === 1 ? "mark" : "marks"}`;
}

/** A share of 0 to 1 as whole percent. */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** Seconds in figures as on a bench timer: "45", "1:05". Rounded up, so that 0 means over. */
export function secondsText(leftMs: number): string {
  const seconds = Math.ceil(leftMs / 1000);
  if (seconds < 60) return String(seconds);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}

/** The time as it is said aloud: "45 seconds", "1 minute 5 seconds". */
export function secondsWords(leftMs: number): string {
  const seconds = Math.ceil(leftMs / 1000);
  const minutes = Math.floor(seconds / 60);
  const rest = seconds % 60;
  const parts = [];
  if (minutes > 0) parts.push(countOf(minutes, "minute"));
  if (rest > 0 || minutes === 0) parts.push(countOf(rest, "second"));
  return parts.join(" ");
}

/** "1 player", "3 players"; words whose plural is another name it. */
export function countOf(count: number, word: string, many = `${word}s`): string {
  return `${count} ${count === 1 ? word : many}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(terms: readonly string[], last: "and" | "or" = "and"): string {
  if (terms.length < 2) return terms[0] ?? "";
  return `${terms.slice(0, -1).join(", ")} ${last} ${terms.at(-1)}`;
}

/** The key in words: "a and b", but "a or b" where more terms count than are asked for. */
export function keyWords(terms: readonly string[], pick: number): string {
  return listed(terms, terms.length > pick ? "or" : "and");
}

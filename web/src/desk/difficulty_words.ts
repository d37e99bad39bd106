import type { DeskItem } from "../wire";
import { percent } from "../words/numbers";

/** What is known of the difficulty of an item, each said to be what it is: measured on classes, or predicted. */
export function difficultyWords(item: DeskItem): string[] {
  const words = [];
  if (item.observed) {
    const { right, answered, low, high, whose } = item.observed;
    const range = `${Math.round(low * 100)}–${Math.round(high * 100)} %`;
    const classes = whose === "course" ? "" : ", all courses";
    words.push(`measured: ${percent(right)} right (n = ${answered}, ${range}${classes})`);
  }
  if (item.predicted) words.push(`predicted: ${item.predicted}`);
  return words;
}

/** The same in a word or two: a measurement where there is one. */
export function difficultyShort(item: DeskItem): string {
  if (item.observed) return `measured: ${percent(item.observed.right)} right`;
  return item.predicted ? `predicted: ${item.predicted}` : "";
}

import type { SubmitAnswer } from "../wire";

export type Certainty = NonNullable<SubmitAnswer["certainty"]>;

/** The published table (Gardner-Medwin): what a certainty is worth if the answer is right, and if it is wrong. */
export const CERTAINTY_TABLE: readonly {
  certainty: Certainty;
  right: number;
  wrong: number;
  best: string;
}[] = [
  { certainty: 1, right: 1, wrong: 0, best: "below 67 %" },
  { certainty: 2, right: 2, wrong: -2, best: "67 to 80 %" },
  { certainty: 3, right: 3, wrong: -6, best: "above 80 %" },
];

/** Figures with a real minus sign. */
export function signed(mark: number): string {
  return mark < 0 ? `−${-mark}` : `${mark}`;
}

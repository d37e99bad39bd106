import type { OwnView } from "../wire";

export type FactorPercent = OwnView["factor_percent"];

/** A time factor as people say it: "1.5 times", "twice". */
export function factorWords(factor: FactorPercent): string {
  return factor === 200 ? "twice" : `${factor / 100} times`;
}

/** The same in figures: "2 ×". */
export function factorFigures(factor: FactorPercent): string {
  return `${factor / 100} ×`;
}

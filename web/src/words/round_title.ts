import type { PublicView } from "../wire";

/** Which round this is: "Round 3 of 10", with a word when it is there to warm up. */
export function roundTitle(view: PublicView): string {
  const warmUp = view.item?.warm_up ? " · warm-up" : "";
  return `Round ${view.round} of ${view.rounds}${warmUp}`;
}

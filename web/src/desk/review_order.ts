import type { ReviewLine } from "../wire";

/** Which reviews a host wants to see. */
export type Wanted = "current" | "preparing" | "in class" | "finished" | "archived" | "all";

export const WANTED: readonly { value: Wanted; text: string }[] = [
  { value: "current", text: "all but archived" },
  { value: "preparing", text: "being prepared" },
  { value: "in class", text: "in class" },
  { value: "finished", text: "finished" },
  { value: "archived", text: "archived" },
  { value: "all", text: "all" },
];

/** Whether a class is, or may be, in the room. */
export function isInClass({ phase }: Pick<ReviewLine, "phase">): boolean {
  return phase !== "preparing" && phase !== "finished";
}

/** The reviews of this kind whose title or course holds all the words, in the order of the list. */
export function found(reviews: readonly ReviewLine[], words: string, wanted: Wanted): ReviewLine[] {
  const sought = folded(words).split(/\s+/).filter(Boolean);
  return reviews
    .filter((review) => isWanted(review, wanted))
    .filter((review) => sought.every((word) => folded(`${review.title} ${review.course}`).includes(word)))
    .sort(byNearness);
}

function isWanted(review: ReviewLine, wanted: Wanted): boolean {
  switch (wanted) {
    case "all":
      return true;
    case "archived":
      return review.archived === true;
    case "current":
      return !review.archived;
    case "in class":
      return isInClass(review);
    default:
      return !review.archived && review.phase === wanted;
  }
}

/** Who is in class comes first, then what is planned, the next day first, then the newest. */
function byNearness(one: ReviewLine, other: ReviewLine): number {
  return (
    rank(one) - rank(other) ||
    (rank(one) === 1 ? planned(one) - planned(other) : other.prepared_at - one.prepared_at)
  );
}

function rank(review: ReviewLine): number {
  if (isInClass(review)) return 0;
  return review.phase === "preparing" && planned(review) > 0 ? 1 : 2;
}

function planned(review: ReviewLine): number {
  return review.planned_at ?? 0;
}

function folded(text: string): string {
  return text.normalize("NFKD").replace(/\p{M}/gu, "").toLocaleLowerCase("en");
}

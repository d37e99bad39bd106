import type { ReviewLine } from "../wire";
import { countOf } from "../words/numbers";
import { PHASE_WORD } from "./family_words";

/** Reviews of this host that can be gone on with, or looked at again. */
export function ReviewList({
  reviews,
  onOpen,
}: {
  reviews: readonly ReviewLine[];
  onOpen: (room: string) => void;
}) {
  return (
    <section class="reviews">
      <h2 class="start_heading">Go on with</h2>
      {reviews.length === 0 && <p class="choice_note">No review has been laid out yet.</p>}
      <ul class="reviews_list">
        {reviews.map((review) => (
          <li key={review.room} class="reviews_line">
            <button class="reviews_open" type="button" onClick={() => onOpen(review.room)}>
              <span class="reviews_title">{review.title || "Untitled"}</span>
              <span class="choice_note">{review.course}</span>
              <span class="choice_note">
                {phaseWord(review.phase)} · {countOf(review.rounds, "round")} · {whenText(review.prepared_at)}
              </span>
            </button>
            {hasReport(review) && (
              <a class="reviews_report" href={`/desk/report/${encodeURIComponent(review.room)}`}>
                Report<span class="unseen"> of {review.title || "Untitled"}</span>
              </a>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Before the first round is closed there is nothing to report. */
function hasReport({ phase }: ReviewLine): boolean {
  return phase === "closed" || phase === "explained" || phase === "finished";
}

function phaseWord(phase: string): string {
  return PHASE_WORD[phase as keyof typeof PHASE_WORD] ?? phase;
}

function whenText(preparedAt: number): string {
  return new Date(preparedAt).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });
}

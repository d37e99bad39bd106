import "./review_list.css";
import { useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import { FindField } from "../parts/find_field";
import type { ReviewLine } from "../wire";
import { countOf } from "../words/numbers";
import { CoursesOverTime } from "./course_links";
import { PHASE_WORD } from "./family_words";
import { momentText } from "./planned_time";
import { ReviewDialog } from "./review_dialog";
import { found, WANTED, type Wanted } from "./review_order";

/** All reviews of an owner: found by title and state, opened, and by "More" changed as things. */
export function ReviewList(props: {
  reviews: readonly ReviewLine[];
  /** How many there are with those that were not fetched. */
  inAll: number;
  onOlder: () => Promise<void>;
  /** Whether they are one's own; an assistant opens and runs them, and no more. */
  owns: boolean;
  onOpen: (room: string) => void;
  /** Carries out an order; what keeps it from being carried out, or nothing. */
  onChange: (draft: Draft) => Promise<string>;
}) {
  const { reviews, owns, onOpen } = props;
  const [words, setWords] = useState("");
  const [wanted, setWanted] = useState<Wanted>("current");
  const [chosen, choose] = useState("");
  const [said, setSaid] = useState("");
  const heading = useRef<HTMLHeadingElement>(null);
  const shown = found(reviews, words, wanted);
  const review = reviews.find((one) => one.room === chosen);
  const leave = (outcome: string) => {
    setSaid(outcome);
    choose("");
    if (outcome !== "") heading.current?.focus();
  };
  return (
    <section class="reviews" aria-labelledby="reviews-heading">
      <h2 class="start_heading" id="reviews-heading" ref={heading} tabIndex={-1}>
        Reviews
      </h2>
      {reviews.length === 0 ? (
        <p class="choice_note reviews_none">No review has been laid out yet.</p>
      ) : (
        <Finder words={words} wanted={wanted} onWords={setWords} onWanted={setWanted} />
      )}
      <p class="reviews_said" role="status">
        {said || countText(shown.length, reviews.length, words !== "" || wanted !== "all")}
      </p>
      {reviews.length > 0 && shown.length === 0 && <p class="choice_note">None of this kind.</p>}
      <ul class="reviews_list">
        {shown.map((one) => (
          <Line key={one.room} review={one} owns={owns} onOpen={onOpen} onMore={choose} />
        ))}
      </ul>
      <Older listed={reviews.length} inAll={props.inAll} onOlder={props.onOlder} />
      <CoursesOverTime reviews={reviews.filter(hasReport)} partly={reviews.length < props.inAll} />
      {review && <ReviewDialog key={chosen} review={review} onChange={props.onChange} onDone={leave} />}
    </section>
  );
}

/** That there are older ones, and the way to them. */
function Older(props: { listed: number; inAll: number; onOlder: () => Promise<void> }) {
  if (props.listed >= props.inAll) return null;
  return (
    <p class="reviews_older">
      <span>
        The newest {props.listed} of {countOf(props.inAll, "review")} are listed and searched.
      </span>
      <button class="button" type="button" onClick={() => void props.onOlder()}>
        Fetch older ones
      </button>
    </p>
  );
}

function countText(shown: number, listed: number, sought: boolean): string {
  if (listed === 0) return "";
  return sought ? `${shown} of ${countOf(listed, "review")}` : countOf(listed, "review");
}

function Finder(props: {
  words: string;
  wanted: Wanted;
  onWords: (words: string) => void;
  onWanted: (wanted: Wanted) => void;
}) {
  return (
    <search class="reviews_finder">
      <FindField label="Title or course" words={props.words} onWords={props.onWords} />
      <label class="field">
        <span class="field_label">State</span>
        <select
          class="field_input"
          value={props.wanted}
          onChange={(event) => props.onWanted(event.currentTarget.value as Wanted)}
        >
          {WANTED.map(({ value, text }) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
      </label>
    </search>
  );
}

function Line(props: {
  review: ReviewLine;
  owns: boolean;
  onOpen: (room: string) => void;
  onMore: (room: string) => void;
}) {
  const { review } = props;
  const title = review.title || "Untitled";
  return (
    <li class="reviews_line">
      <button class="reviews_open" type="button" onClick={() => props.onOpen(review.room)}>
        <span class="reviews_title">{title}</span>
        <span class="choice_note">{review.course}</span>
        <span class="choice_note">
          {review.archived && "archived · "}
          {phaseWord(review.phase)} · {countOf(review.rounds, "round")}
        </span>
        <When review={review} />
      </button>
      <span class="reviews_acts">
        {hasReport(review) && (
          <a class="reviews_report" href={`/desk/report/${encodeURIComponent(review.room)}`}>
            Report<span class="unseen"> of {title}</span>
          </a>
        )}
        {props.owns && (
          <button
            class="button reviews_more"
            type="button"
            aria-haspopup="dialog"
            onClick={() => props.onMore(review.room)}
          >
            More<span class="unseen"> for {title}</span>
          </button>
        )}
      </span>
    </li>
  );
}

/** When it is planned, if it is; else when it was laid out. */
function When({ review }: { review: ReviewLine }) {
  if (review.phase !== "preparing" || typeof review.planned_at !== "number") {
    return <span class="choice_note">laid out {momentText(review.prepared_at)}</span>;
  }
  return (
    <span class="reviews_planned">
      planned for {momentText(review.planned_at)}
      {review.opens_itself && ", the door opens itself"}
    </span>
  );
}

/** Before the first round is closed there is nothing to report. */
function hasReport({ phase }: ReviewLine): boolean {
  return phase === "closed" || phase === "explained" || phase === "finished";
}

function phaseWord(phase: string): string {
  return PHASE_WORD[phase as keyof typeof PHASE_WORD] ?? phase;
}

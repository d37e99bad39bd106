import "./today.css";
import "../parts/buttons.css";
import type { OwnKey } from "../line/own_key";
import { useStore } from "../line/store";
import type { DayAhead, MissedReview, Today } from "../wire";
import { dayOf, dayText } from "../words/dates";
import { countOf } from "../words/numbers";
import { Forecast } from "./forecast";
import { forgetKeptPages } from "./kept_pages";
import { KeyPanel } from "./key_panel";
import { PlanForm } from "./plan_form";
import { addressOf } from "./routes";
import type { MineSession } from "./session";
import { TakeAway } from "./take_away";

/** What is due, what was missed, what is to be expected on the day of the practical, and the plan's settings. */
export function TodayPage(props: {
  session: MineSession;
  today: Today;
  playerKey: OwnKey;
  say: (text: string) => void;
}) {
  const { session, today, playerKey, say } = props;
  return (
    <div class="today">
      <div class="today_main">
        <h1 class="stem" id="stem" tabIndex={-1}>
          Second look
        </h1>
        <Due session={session} today={today} />
        <Reviews reviews={today.missed_reviews} />
        <section>
          <h2 class="today_heading">Practise alone</h2>
          <p>Items of any course list, without a clock or as a mock practical.</p>
          <p class="today_act">
            <a class="button" href={addressOf({ page: "practice" })}>
              Practise
            </a>
          </p>
        </section>
        <TakeAway session={session} say={say} />
        <KeyPanel playerKey={playerKey} say={say} onForgotten={forgetKeptPages} />
      </div>
      <div class="today_aside">
        <Forecast rows={today.forecast} day={today.exam_date} />
        <Ahead days={today.ahead} />
        <PlanForm session={session} today={today} say={say} />
      </div>
    </div>
  );
}

function Due({ session, today }: { session: MineSession; today: Today }) {
  useStore(session.changes);
  const left = today.looks.filter((look) => session.given(look.id) === null).length;
  if (left === 0) return <p class="today_rest">{restText(today)}</p>;
  return (
    <section class="due" aria-label="Due today">
      <p>
        <span class="due_count">{countOf(left, "item")}</span> due today
        {left === today.looks.length &&
          `, about ${countOf(Math.max(1, Math.round(today.minutes)), "minute")}`}
      </p>
      <p>
        <a class="button button-main" href={addressOf({ page: "look", room: "" })}>
          {left < today.looks.length ? "Go on" : "Begin"}
        </a>
      </p>
    </section>
  );
}

/** What to say when nothing is due: when to come back, or how anything gets here at all. */
function restText(today: Today): string {
  const next = today.ahead.find((day) => day.count > 0);
  const done = today.looks.length > 0 ? "Today's items are done." : "Nothing is due today.";
  if (next) return `${done} Next: ${countOf(next.count, "item")} on ${dayText(next.date)}.`;
  if (today.looks.length > 0 || today.missed_reviews.length > 0 || today.forecast.length > 0) return done;
  return "Nothing is here yet. Items that you miss in a review played in this browser come here by themselves.";
}

function Reviews({ reviews }: { reviews: readonly MissedReview[] }) {
  if (reviews.length === 0) return null;
  return (
    <section>
      <h2 class="today_heading">Missed in reviews</h2>
      <ul class="look_list">
        {reviews.map((review) => (
          <li key={review.room}>
            <a href={addressOf({ page: "look", room: review.room })}>{review.title}</a>
            <span class="look_word">
              {review.finished_at === null ? "still going on" : dayOf(review.finished_at)} ·{" "}
              {review.left === 0 ? "all looked at again" : `${countOf(review.left, "item")} left`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Days of the plan that are listed; later ones will still move. */
const MOST_DAYS = 7;

function Ahead({ days }: { days: readonly DayAhead[] }) {
  const shown = days.slice(0, MOST_DAYS);
  const most = Math.max(1, ...shown.map((day) => day.count));
  if (shown.every((day) => day.count === 0)) return null;
  return (
    <section>
      <h2 class="today_heading">The next days</h2>
      <ul class="ahead">
        {shown.map((day) => (
          <li key={day.date} class="ahead_day">
            <span>{dayText(day.date)}</span>
            <span class="ahead_bar" aria-hidden="true" style={{ transform: `scaleX(${day.count / most})` }} />
            <span class="ahead_count">{day.count === 0 ? "–" : countOf(day.count, "item")}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

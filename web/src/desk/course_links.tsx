import type { ReviewLine } from "../wire";
import { dayOf } from "../words/dates";
import { countOf } from "../words/numbers";

/** For each course list the report over all its reviews, and what that covers. */
export function CoursesOverTime(props: { reviews: readonly ReviewLine[]; partly: boolean }) {
  const courses = byCourse(props.reviews);
  if (courses.length === 0) return null;
  return (
    <section class="reviews_courses" aria-labelledby="courses-heading">
      <h3 class="reviews_courses_heading" id="courses-heading">
        Courses over time
      </h3>
      <ul class="reviews_courses_list">
        {courses.map(([course, held]) => (
          <li key={course}>
            <a href={`/desk/report/${encodeURIComponent(held[0]?.room ?? "")}/course`}>{course}</a>
            <span class="choice_note">{covers(held, props.partly)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

export function byCourse(reviews: readonly ReviewLine[]): [string, ReviewLine[]][] {
  const courses = new Map<string, ReviewLine[]>();
  for (const review of reviews) courses.set(review.course, [...(courses.get(review.course) ?? []), review]);
  return [...courses].sort(([one], [other]) => one.localeCompare(other, "en"));
}

/** Reviews held, and the days of the first and the last one. */
export function covers(held: readonly ReviewLine[], partly: boolean): string {
  const days = held.map((one) => one.finished_at ?? one.prepared_at).sort((one, other) => one - other);
  const [first, last] = [dayOf(days[0] ?? 0), dayOf(days.at(-1) ?? 0)];
  const count = `${countOf(held.length, "review")} held${partly ? " or more" : ""}`;
  return `${count}, ${first === last ? first : `${first} to ${last}`}`;
}

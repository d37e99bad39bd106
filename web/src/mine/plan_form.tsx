import { useEffect, useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import type { CourseChoice, PlanSettings, Today } from "../wire";
import type { MineSession } from "./session";

const MOST_MINUTES = 240;

/** Course list, day of the practical, minutes a day: all that the return plan has to be told. */
export function PlanForm(props: { session: MineSession; today: Today; say: (text: string) => void }) {
  const { session, say, today } = props;
  const [plan, setPlan] = useState(today.settings);
  const [word, setWord] = useState("");
  const [complaint, setComplaint] = useState("");
  useEffect(() => setPlan(today.settings), [today.settings]);
  const change = (part: Partial<PlanSettings>) => {
    setWord("");
    setPlan({ ...plan, ...part });
  };
  const save = async (event: Event) => {
    event.preventDefault();
    const time_zone = Intl.DateTimeFormat().resolvedOptions().timeZone || plan.time_zone;
    const reply = await session.api.send("PUT", "/mine/api/settings", { ...plan, time_zone });
    setComplaint(reply.kind === "problem" ? reply.text : reply.kind === "no line" ? NO_LINE : "");
    if (reply.kind !== "fresh") return;
    setWord("Saved.");
    say("The plan is saved.");
    await session.refresh();
  };
  return (
    <form class="plan_form" onSubmit={(event) => void save(event)}>
      <h2 class="today_heading">Your plan</h2>
      <PlanFields plan={plan} courses={today.courses} onChange={change} />
      <Complaint text={complaint} />
      <p class="plan_save">
        <button class="button" type="submit">
          Save the plan
        </button>
        <span>{word}</span>
      </p>
    </form>
  );
}

function PlanFields(props: {
  plan: PlanSettings;
  courses: readonly CourseChoice[];
  onChange: (part: Partial<PlanSettings>) => void;
}) {
  const { plan, courses, onChange } = props;
  return (
    <>
      <CourseSelect
        id="plan-course"
        courses={courses}
        course={plan.course}
        onCourse={(course) => onChange({ course })}
        any
      />
      <div class="field">
        <label class="field_label" for="plan-exam">
          Day of the practical
        </label>
        <input
          id="plan-exam"
          class="field_input"
          type="date"
          value={plan.exam_date ?? ""}
          onInput={(event) => onChange({ exam_date: event.currentTarget.value || null })}
        />
      </div>
      <div class="field">
        <label class="field_label" for="plan-minutes">
          Minutes a day, at most
        </label>
        <input
          id="plan-minutes"
          class="field_input"
          type="number"
          min={1}
          max={MOST_MINUTES}
          value={plan.minutes_a_day}
          onInput={(event) => onChange({ minutes_a_day: event.currentTarget.valueAsNumber || 1 })}
        />
      </div>
    </>
  );
}

export const NO_LINE = "There is no line to the server now. Try again when there is one.";

/** One of the server's course lists; with `any` also none. */
export function CourseSelect(props: {
  id: string;
  courses: readonly CourseChoice[];
  course: string;
  onCourse: (course: string) => void;
  any?: boolean;
}) {
  return (
    <div class="field">
      <label class="field_label" for={props.id}>
        Course list
      </label>
      <select
        id={props.id}
        class="field_input"
        value={props.course}
        onChange={(event) => props.onCourse(event.currentTarget.value)}
      >
        {props.any && <option value="">as in each review</option>}
        {props.courses.map((course) => (
          <option key={course.id} value={course.id}>
            {course.title}
          </option>
        ))}
      </select>
    </div>
  );
}

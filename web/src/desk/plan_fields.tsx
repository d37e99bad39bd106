import { Tick } from "../parts/tick";
import { TimingField } from "../parts/timing_field";
import type { DeskSettings } from "../wire";
import { familyWord } from "./family_words";
import { familiesOf, MOST_ROUNDS, type Plan, withCourse, withFamily } from "./plan";

interface FieldProps {
  plan: Plan;
  onPlan: (plan: Plan) => void;
}

export function CourseChoice({ plan, settings, onPlan }: FieldProps & { settings: DeskSettings }) {
  return (
    <fieldset class="choice plan_courses">
      <legend class="field_label">Course list</legend>
      {settings.courses.map((course) => (
        <label key={course.id} class="choice_line">
          <input
            type="radio"
            name="course"
            checked={plan.course === course.id}
            onChange={() => onPlan(withCourse(plan, settings, course.id))}
          />
          <span>
            {course.title} <span class="choice_note">{course.muscles} muscles</span>
            {course.description && plan.course === course.id && (
              <span class="choice_note choice_more">{course.description}</span>
            )}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

export function FamilyChoice({ plan, settings, onPlan }: FieldProps & { settings: DeskSettings }) {
  const course = settings.courses.find((one) => one.id === plan.course);
  return (
    <fieldset class="choice plan_families">
      <legend class="field_label">Families of items</legend>
      <div class="choice_columns">
        {familiesOf(settings, course).map((family) => (
          <label key={family} class="choice_line">
            <input
              type="checkbox"
              checked={plan.families.includes(family)}
              onChange={(event) => onPlan(withFamily(plan, family, event.currentTarget.checked))}
            />
            <span>{familyWord(family)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

export function TimingChoice({ plan, onPlan }: FieldProps) {
  return (
    <TimingField
      value={plan}
      onTiming={(timing) => onPlan({ ...plan, ...timing })}
      unlimited="you close each round"
      choiceClass="choice plan_timing"
      lineClass="choice_line"
      numberClass="choice_number"
    />
  );
}

export function MoreChoice({ plan, onPlan }: FieldProps) {
  return (
    <fieldset class="choice plan_more">
      <legend class="field_label">Besides</legend>
      <Tick line="choice_line" checked={plan.typed} onTick={(checked) => onPlan({ ...plan, typed: checked })}>
        some answers are typed
      </Tick>
      <Tick
        line="choice_line"
        checked={plan.standings}
        onTick={(checked) => onPlan({ ...plan, standings: checked })}
      >
        standings on the wall, by handle
      </Tick>
      <Tick
        line="choice_line"
        checked={plan.certainty}
        onTick={(checked) => onPlan({ ...plan, certainty: checked })}
      >
        players say how certain they are, 1 2 3; never in standings
      </Tick>
      <Tick
        line="choice_line"
        checked={plan.holds_results}
        onTick={(checked) => onPlan({ ...plan, holds_results: checked })}
      >
        results are held until you show them
      </Tick>
      {plan.timing !== "untimed" && (
        <Tick
          line="choice_line"
          checked={plan.players_take_time}
          onTick={(checked) => onPlan({ ...plan, players_take_time: checked })}
        >
          while held, players may take more time themselves
        </Tick>
      )}
    </fieldset>
  );
}

/** Title and number of rounds; with a blueprint the number is the total of its grid. */
export function TitleAndRounds({ plan, onPlan, total }: FieldProps & { total: number | null }) {
  return (
    <>
      <label class="field plan_title">
        <span class="field_label">Title, shown on the wall</span>
        <input
          class="field_input"
          value={plan.title}
          maxLength={120}
          onInput={(event) => onPlan({ ...plan, title: event.currentTarget.value })}
        />
      </label>
      <label class="field plan_rounds">
        <span class="field_label">Rounds</span>
        <input
          class="field_input"
          type="number"
          inputMode="numeric"
          min={1}
          max={MOST_ROUNDS}
          readOnly={total !== null}
          value={total ?? plan.rounds}
          onInput={(event) => onPlan({ ...plan, rounds: event.currentTarget.valueAsNumber })}
        />
      </label>
    </>
  );
}

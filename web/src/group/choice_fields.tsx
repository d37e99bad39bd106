import { Tick } from "../parts/tick";
import type { GroupSettings } from "../wire";
import { secondsWords } from "../words/numbers";
import { type Choices, READING_TIMES } from "./choices";

interface FieldProps {
  choices: Choices;
  onChoices: (choices: Choices) => void;
}

export function CourseField({ choices, onChoices, settings }: FieldProps & { settings: GroupSettings }) {
  const chosen = settings.courses.find((course) => course.id === choices.course);
  return (
    <div class="field group_wide">
      <label class="field_label" for="course">
        Course list
      </label>
      <select
        id="course"
        class="field_input"
        value={choices.course}
        onChange={(event) => onChoices({ ...choices, course: event.currentTarget.value })}
      >
        {settings.courses.map((course) => (
          <option key={course.id} value={course.id}>
            {course.title} ({course.muscles} muscles)
          </option>
        ))}
      </select>
      {chosen?.description && <span class="field_hint">{chosen.description}</span>}
    </div>
  );
}

export function RoundsField({ choices, onChoices, most }: FieldProps & { most: number }) {
  return (
    <label class="field">
      <span class="field_label">Rounds</span>
      <input
        class="field_input"
        type="number"
        inputMode="numeric"
        min={1}
        max={most}
        value={choices.rounds}
        onInput={(event) => onChoices({ ...choices, rounds: event.currentTarget.valueAsNumber })}
      />
    </label>
  );
}

export function ReadingField({ choices, onChoices }: FieldProps) {
  return (
    <label class="field">
      <span class="field_label">A record stays until all are ready,</span>
      <select
        class="field_input"
        value={choices.reading}
        onChange={(event) => onChoices({ ...choices, reading: Number(event.currentTarget.value) })}
      >
        {READING_TIMES.map((seconds) => (
          <option key={seconds} value={seconds}>
            {seconds === 0 ? "however long that takes" : `at most ${secondsWords(seconds * 1000)}`}
          </option>
        ))}
      </select>
    </label>
  );
}

export function Besides({ choices, onChoices }: FieldProps) {
  return (
    <fieldset class="group_choice">
      <legend class="field_label">Besides</legend>
      <Tick
        line="group_line"
        checked={choices.typed}
        onTick={(checked) => onChoices({ ...choices, typed: checked })}
      >
        some answers are typed
      </Tick>
      <Tick
        line="group_line"
        checked={choices.standings}
        onTick={(checked) => onChoices({ ...choices, standings: checked })}
      >
        standings, by handle
      </Tick>
    </fieldset>
  );
}

export function WordField(
  props: FieldProps & { name: "title" | "handle"; label: string; hint: string; longest: number },
) {
  const { choices, onChoices, name } = props;
  return (
    <div class="field">
      <label class="field_label" for={name}>
        {props.label}
      </label>
      <span class="field_hint" id={`${name}-hint`}>
        {props.hint}
      </span>
      <input
        id={name}
        class="field_input"
        value={choices[name]}
        maxLength={props.longest}
        onInput={(event) => onChoices({ ...choices, [name]: event.currentTarget.value })}
        autocomplete={name === "handle" ? "nickname" : "off"}
        spellcheck={false}
        aria-describedby={`${name}-hint`}
      />
    </div>
  );
}

import { useState } from "preact/hooks";
import { familyWord } from "../desk/family_words";
import { newMessageId } from "../line/random";
import { Complaint } from "../parts/notice";
import { Tick } from "../parts/tick";
import type { CourseChoice, PracticeOrder, PracticeSet } from "../wire";
import { CourseSelect, NO_LINE } from "./plan_form";
import { addressOf } from "./routes";
import type { MineSession } from "./session";

const MOST_ROUNDS = 60;
const STATION_SECONDS = [60, 75, 90] as const;
const SPELLINGS: { spelling: PracticeOrder["spelling"]; text: string }[] = [
  { spelling: "accept", text: "misspelt counts if no other term is meant" },
  { spelling: "half", text: "misspelt is half a mark" },
  { spelling: "exact", text: "spelling must be exact" },
];

/** What to practise: course list, families, regions, how many items, untimed or as a mock practical. */
export function PracticeForm(props: {
  session: MineSession;
  courses: readonly CourseChoice[];
  course: string;
}) {
  const { session, courses } = props;
  const [order, setOrder] = useState(() => firstOrder(props.course || (courses[0]?.id ?? "")));
  const [complaint, setComplaint] = useState("");
  const [busy, setBusy] = useState(false);
  const course = courses.find((one) => one.id === order.course);
  const change = (part: Partial<PracticeOrder>) => setOrder({ ...order, ...part });
  const deal = async (event: Event) => {
    event.preventDefault();
    setBusy(true);
    const reply = await session.api.send<PracticeSet>("POST", "/mine/api/practice", {
      ...order,
      order: newMessageId(),
    });
    setBusy(false);
    setComplaint(reply.kind === "problem" ? reply.text : reply.kind === "no line" ? NO_LINE : "");
    if (reply.kind === "fresh") location.hash = addressOf({ page: "set", set: reply.value.id });
  };
  return (
    <form class="practice" onSubmit={(event) => void deal(event)}>
      <h1 class="stem" id="stem" tabIndex={-1}>
        Practise alone
      </h1>
      <CourseSelect
        id="practice-course"
        courses={courses}
        course={order.course}
        onCourse={(id) => change({ course: id, families: [], regions: [] })}
      />
      <Narrowing course={course} order={order} onChange={change} />
      <ModeChoice order={order} onChange={change} />
      <Complaint text={complaint} />
      <button class="button button-main" type="submit" disabled={busy}>
        {busy ? "Dealing …" : "Deal the items"}
      </button>
    </form>
  );
}

function firstOrder(course: string): PracticeOrder {
  return {
    order: "",
    course,
    families: [],
    regions: [],
    rounds: 10,
    mode: "practice",
    seconds: null,
    typed: false,
    spelling: "accept",
  };
}

interface ChoiceProps {
  order: PracticeOrder;
  onChange: (part: Partial<PracticeOrder>) => void;
}

function Narrowing({ course, order, onChange }: ChoiceProps & { course: CourseChoice | undefined }) {
  return (
    <>
      <Ticks
        legend="Families of items (none ticked: all)"
        lines={(course?.families ?? []).map((family) => ({ id: family, text: familyWord(family) }))}
        ticked={order.families}
        onTicked={(families) => onChange({ families: families as PracticeOrder["families"] })}
      />
      <Ticks
        legend="Regions (none ticked: all)"
        lines={(course?.regions ?? []).map((region) => ({ id: region.id, text: region.name }))}
        ticked={order.regions}
        onTicked={(regions) => onChange({ regions })}
      />
    </>
  );
}

function ModeChoice({ order, onChange }: ChoiceProps) {
  const mock = order.mode === "mock";
  return (
    <>
      <fieldset class="choice">
        <legend class="field_label">How</legend>
        <Radio
          name="mode"
          checked={!mock}
          onPick={() => onChange({ mode: "practice", seconds: null, typed: false })}
        >
          one after another, without a clock, each explained at once
        </Radio>
        <Radio
          name="mode"
          checked={mock}
          onPick={() => onChange({ mode: "mock", seconds: 60, typed: true, rounds: 20 })}
        >
          mock practical: stations with a clock, one answer sheet, explained at the end
        </Radio>
      </fieldset>
      <label class="field practice_rounds">
        <span class="field_label">{mock ? "Stations" : "Items"}</span>
        <input
          class="field_input"
          type="number"
          inputMode="numeric"
          min={1}
          max={MOST_ROUNDS}
          value={order.rounds}
          onInput={(event) => onChange({ rounds: event.currentTarget.valueAsNumber || 1 })}
        />
      </label>
      {mock && <StationChoice order={order} onChange={onChange} />}
      <AnswerChoice order={order} onChange={onChange} />
    </>
  );
}

function StationChoice({ order, onChange }: ChoiceProps) {
  return (
    <fieldset class="choice">
      <legend class="field_label">Time at each station</legend>
      {STATION_SECONDS.map((seconds) => (
        <Radio
          key={seconds}
          name="seconds"
          checked={order.seconds === seconds}
          onPick={() => onChange({ seconds })}
        >
          {seconds} seconds
        </Radio>
      ))}
      <Radio name="seconds" checked={order.seconds === null} onPick={() => onChange({ seconds: null })}>
        no clock
      </Radio>
    </fieldset>
  );
}

function AnswerChoice({ order, onChange }: ChoiceProps) {
  return (
    <fieldset class="choice">
      <legend class="field_label">Answers</legend>
      <Tick line="choice_line" checked={order.typed} onTick={(checked) => onChange({ typed: checked })}>
        typed where an item allows it
      </Tick>
      {order.typed &&
        SPELLINGS.map(({ spelling, text }) => (
          <Radio
            key={spelling}
            name="spelling"
            checked={order.spelling === spelling}
            onPick={() => onChange({ spelling })}
          >
            {text}
          </Radio>
        ))}
    </fieldset>
  );
}

function Radio(props: {
  name: string;
  checked: boolean;
  onPick: () => void;
  children: preact.ComponentChildren;
}) {
  return (
    <label class="choice_line">
      <input type="radio" name={props.name} checked={props.checked} onChange={props.onPick} />
      <span>{props.children}</span>
    </label>
  );
}

function Ticks(props: {
  legend: string;
  lines: readonly { id: string; text: string }[];
  ticked: readonly string[];
  onTicked: (ticked: string[]) => void;
}) {
  return (
    <details class="practice_ticks">
      <summary>
        {props.legend}
        {props.ticked.length > 0 && `: ${props.ticked.length} ticked`}
      </summary>
      <fieldset class="choice choice_columns">
        <legend class="unseen">{props.legend}</legend>
        {props.lines.map((line) => (
          <label key={line.id} class="choice_line">
            <input
              type="checkbox"
              checked={props.ticked.includes(line.id)}
              onChange={() =>
                props.onTicked(
                  props.ticked.includes(line.id)
                    ? props.ticked.filter((one) => one !== line.id)
                    : [...props.ticked, line.id],
                )
              }
            />
            <span>{line.text}</span>
          </label>
        ))}
      </fieldset>
    </details>
  );
}

import { useState } from "preact/hooks";
import type { PracticeSet } from "../../wire";
import { countOf } from "../../words/numbers";

/** How much of the set time one gets; 0 is no clock. Extra time is usual as half again or twice. */
const FACTORS = [1, 1.5, 2, 10, 0] as const;

/** Before the walk: where to begin, and how the clock shall run. */
export function MockStart(props: {
  set: PracticeSet;
  onBegin: (start: number, stationMs: number | null) => void;
}) {
  const { set } = props;
  const [start, setStart] = useState(0);
  const [factor, setFactor] = useState<number>(set.seconds === null ? 0 : 1);
  const begin = (event: Event) => {
    event.preventDefault();
    const seconds = (set.seconds ?? 0) * factor;
    props.onBegin(start, seconds > 0 ? seconds * 1000 : null);
  };
  return (
    <form class="mock_start" onSubmit={begin}>
      <h1 class="stem" id="stem" tabIndex={-1}>
        {set.title}
      </h1>
      <p>
        {countOf(set.looks.length, "station")}, one prompt each. Write on the numbered answer sheet; the key
        comes when the whole sheet is handed in. The clock warns at 15 seconds, moves you on by itself, and
        stands while this page is out of sight.
      </p>
      <Choice
        id="mock-start"
        label="Begin at station"
        value={start}
        lines={set.looks.map((_, station) => ({ value: station, text: String(station + 1) }))}
        onValue={setStart}
      />
      {set.seconds !== null && (
        <Choice
          id="mock-time"
          label="Time at each station"
          value={factor}
          lines={FACTORS.map((one) => ({ value: one, text: timeText(set.seconds ?? 0, one) }))}
          onValue={setFactor}
        />
      )}
      <button class="button button-main" type="submit">
        Begin
      </button>
    </form>
  );
}

function Choice(props: {
  id: string;
  label: string;
  value: number;
  lines: readonly { value: number; text: string }[];
  onValue: (value: number) => void;
}) {
  return (
    <div class="field">
      <label class="field_label" for={props.id}>
        {props.label}
      </label>
      <select
        id={props.id}
        class="field_input"
        value={props.value}
        onChange={(event) => props.onValue(Number(event.currentTarget.value))}
      >
        {props.lines.map((line) => (
          <option key={line.value} value={line.value}>
            {line.text}
          </option>
        ))}
      </select>
    </div>
  );
}

function timeText(seconds: number, factor: number): string {
  if (factor === 0) return "no clock";
  return factor === 1 ? `${seconds} s` : `${seconds * factor} s (${factor} times as long)`;
}

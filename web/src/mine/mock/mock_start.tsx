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
  const [factor, setFactor] = useState(set.seconds === null ? 0 : 1);
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
      <div class="field">
        <label class="field_label" for="mock-start">
          Begin at station
        </label>
        <select
          id="mock-start"
          class="field_input"
          value={start}
          onChange={(event) => setStart(Number(event.currentTarget.value))}
        >
          {set.looks.map((look, station) => (
            <option key={look.id} value={station}>
              {station + 1}
            </option>
          ))}
        </select>
      </div>
      {set.seconds !== null && (
        <div class="field">
          <label class="field_label" for="mock-time">
            Time at each station
          </label>
          <select
            id="mock-time"
            class="field_input"
            value={factor}
            onChange={(event) => setFactor(Number(event.currentTarget.value))}
          >
            {FACTORS.map((one) => (
              <option key={one} value={one}>
                {timeText(set.seconds ?? 0, one)}
              </option>
            ))}
          </select>
        </div>
      )}
      <button class="button button-main" type="submit">
        Begin
      </button>
    </form>
  );
}

function timeText(seconds: number, factor: number): string {
  if (factor === 0) return "no clock";
  return factor === 1 ? `${seconds} s` : `${seconds * factor} s (${factor} times as long)`;
}

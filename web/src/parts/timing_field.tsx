import type { PrepareReview } from "../wire";

/** How long rounds are: as each item asks, so many seconds for all, or without limit. */
export interface RoundTiming {
  timing: PrepareReview["timing"];
  seconds: number;
}

const LEAST_SECONDS = 5;
const MOST_SECONDS = 3600;

/** The time of the rounds; the names of classes are those of the form around it. */
export function TimingField(props: {
  value: RoundTiming;
  onTiming: (next: RoundTiming) => void;
  /** What ends a round that has no limit. */
  unlimited: string;
  choiceClass: string;
  lineClass: string;
  numberClass: string;
}) {
  const { timing, seconds } = props.value;
  const ways: { way: RoundTiming["timing"]; text: string }[] = [
    { way: "computed", text: "by the length of each item" },
    { way: "fixed", text: "the same for all" },
    { way: "untimed", text: `no limit: ${props.unlimited}` },
  ];
  return (
    <fieldset class={props.choiceClass}>
      <legend class="field_label">Time for each round</legend>
      {ways.map(({ way, text }) => (
        <label key={way} class={props.lineClass}>
          <input
            type="radio"
            name="timing"
            checked={timing === way}
            onChange={() => props.onTiming({ timing: way, seconds })}
          />
          <span>{text}</span>
        </label>
      ))}
      {timing === "fixed" && (
        <label class={props.lineClass}>
          <input
            class={`field_input ${props.numberClass}`}
            type="number"
            inputMode="numeric"
            min={LEAST_SECONDS}
            max={MOST_SECONDS}
            value={seconds}
            onInput={(event) => props.onTiming({ timing, seconds: event.currentTarget.valueAsNumber })}
          />
          <span>seconds</span>
        </label>
      )}
    </fieldset>
  );
}

/** What is wrong with the seconds, as a sentence; empty when nothing is. */
export function timingFault({ timing, seconds }: RoundTiming): string {
  if (timing !== "fixed" || isWhole(seconds, LEAST_SECONDS, MOST_SECONDS)) return "";
  return `Seconds: a number from ${LEAST_SECONDS} to ${MOST_SECONDS}.`;
}

export function isWhole(value: number, least: number, most: number): boolean {
  return Number.isInteger(value) && value >= least && value <= most;
}

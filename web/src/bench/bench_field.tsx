import "./bench.css";
import type { BenchChoice } from "../wire";

type Play = BenchChoice | null;

const WAYS: { how: BenchChoice["how"] | "alone"; text: string }[] = [
  { how: "alone", text: "everybody alone" },
  { how: "choice", text: "at benches taken by name" },
  { how: "drawn", text: "at benches that are drawn" },
];

/** Alone or at benches; the names of classes are those of the form around it. */
export function BenchField(props: {
  play: Play;
  onPlay: (play: Play) => void;
  /** Whether a host leads, who rings the bell. */
  withStations?: boolean;
  choiceClass: string;
  lineClass: string;
}) {
  const { play, onPlay, lineClass } = props;
  const take = (how: BenchChoice["how"] | "alone") =>
    onPlay(
      how === "alone"
        ? null
        : { size: play?.size ?? 4, answers: play?.answers ?? true, stations: play?.stations ?? false, how },
    );
  return (
    <fieldset class={props.choiceClass}>
      <legend class="field_label">Played</legend>
      {WAYS.map(({ how, text }) => (
        <label key={how} class={lineClass}>
          <input
            type="radio"
            name="benches"
            checked={(play?.how ?? "alone") === how}
            onChange={() => take(how)}
          />
          <span>{text}</span>
        </label>
      ))}
      {play?.how === "drawn" && (
        <label class={lineClass}>
          <select
            class="field_input bench_size"
            value={play.size ?? 4}
            onChange={(event) => onPlay({ ...play, size: Number(event.currentTarget.value) })}
          >
            {[3, 4, 5, 6].map((size) => (
              <option key={size}>{size}</option>
            ))}
          </select>
          <span>at each</span>
        </label>
      )}
      {play && <HowBenchesPlay {...props} play={play} />}
    </fieldset>
  );
}

function Tick(props: { lineClass: string; on: boolean; onChange: (on: boolean) => void; text: string }) {
  return (
    <label class={props.lineClass}>
      <input
        type="checkbox"
        checked={props.on}
        onChange={(event) => props.onChange(event.currentTarget.checked)}
      />
      <span>{props.text}</span>
    </label>
  );
}

/** What benches do besides sitting together. */
function HowBenchesPlay(props: {
  play: BenchChoice;
  onPlay: (play: Play) => void;
  withStations?: boolean;
  lineClass: string;
}) {
  const { play, onPlay, lineClass } = props;
  return (
    <>
      <Tick
        lineClass={lineClass}
        on={play.answers ?? true}
        onChange={(answers) => onPlay({ ...play, answers })}
        text="first alone, then one answer for the bench"
      />
      {props.withStations && (
        <Tick
          lineClass={lineClass}
          on={play.stations ?? false}
          onChange={(stations) => onPlay({ ...play, stations })}
          text="benches may start at different items"
        />
      )}
    </>
  );
}

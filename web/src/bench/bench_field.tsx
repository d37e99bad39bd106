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
  choiceClass: string;
  lineClass: string;
}) {
  const { play, onPlay, lineClass } = props;
  const take = (how: BenchChoice["how"] | "alone") =>
    onPlay(how === "alone" ? null : { size: play?.size ?? 4, answers: play?.answers ?? true, how });
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
      {play && (
        <label class={lineClass}>
          <input
            type="checkbox"
            checked={play.answers ?? true}
            onChange={(event) => onPlay({ ...play, answers: event.currentTarget.checked })}
          />
          <span>first alone, then one answer for the bench</span>
        </label>
      )}
    </fieldset>
  );
}

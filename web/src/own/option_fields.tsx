import type { OwnOption } from "../wire";
import { FindingsAt, type Judged, toldBy } from "./findings";
import { MOST_ROWS, moved, type Own, withKey, withOption, withRow } from "./written";

export interface FieldProps {
  own: Own;
  onOwn: (own: Own) => void;
  judged: Judged;
}

const LETTERS = "ABCDEFGHIJ";

/** The options: each with its text, why it is right or wrong, and whether it is the key. */
export function OptionFields({ own, onOwn, judged }: FieldProps) {
  return (
    <fieldset class="own_options">
      <legend class="field_label">Options</legend>
      <p class="field_hint">
        {own.format === "one_best" ? "Mark the one that is right." : "Mark all that are right."} Each says why
        it is right or wrong: that is read after the round.
      </p>
      <FindingsAt field="options" judged={judged} />
      <FindingsAt field="key" judged={judged} />
      {own.options.map((option, row) => (
        <OptionRow key={row} {...{ own, onOwn, judged, option, row }} />
      ))}
      <div class="own_options_end">
        <button
          class="button"
          type="button"
          disabled={own.options.length >= MOST_ROWS}
          onClick={() => onOwn(withRow(own))}
        >
          Another option
        </button>
        <label class="choice_line">
          <input
            type="checkbox"
            checked={own.keeps_order ?? false}
            onChange={(event) => onOwn({ ...own, keeps_order: event.currentTarget.checked })}
          />
          <span>keep this order, as for segments and ranks; else they are shuffled</span>
        </label>
      </div>
    </fieldset>
  );
}

function OptionRow(props: FieldProps & { option: Required<OwnOption>; row: number }) {
  const { own, onOwn, judged, option, row } = props;
  const letter = LETTERS[row] ?? `${row + 1}`;
  const [text, reason] = [`options.${row}.text`, `options.${row}.reason`];
  return (
    <fieldset
      class={option.is_key ? "own_option own_option-key" : "own_option"}
      aria-label={`Option ${letter}`}
    >
      <label class="own_key">
        <input
          type={own.format === "one_best" ? "radio" : "checkbox"}
          name="own-key"
          checked={option.is_key ?? false}
          onChange={(event) => onOwn(withKey(own, row, event.currentTarget.checked))}
        />
        <span>{option.is_key ? "◆ key" : "key"}</span>
      </label>
      <div class="own_option_words">
        <label class="field">
          <span class="field_label">Option {letter}</span>
          <input
            class="field_input"
            value={option.text}
            {...toldBy(text, judged)}
            onInput={(event) => onOwn(withOption(own, row, { text: event.currentTarget.value }))}
          />
        </label>
        <FindingsAt field={text} judged={judged} />
        <label class="field">
          <span class="field_hint">Why {letter} is right or wrong</span>
          <textarea
            class="field_input"
            rows={2}
            value={option.reason}
            {...toldBy(reason, judged)}
            onInput={(event) => onOwn(withOption(own, row, { reason: event.currentTarget.value }))}
          />
        </label>
        <FindingsAt field={reason} judged={judged} />
      </div>
      <OptionSteps {...props} letter={letter} />
    </fieldset>
  );
}

function OptionSteps({ own, onOwn, row, letter }: FieldProps & { row: number; letter: string }) {
  const steps = [
    { sign: "↑", words: `Move ${letter} up`, off: row === 0, take: () => moved(own, row, -1) },
    {
      sign: "↓",
      words: `Move ${letter} down`,
      off: row === own.options.length - 1,
      take: () => moved(own, row, 1),
    },
    {
      sign: "✕",
      words: `Take ${letter} out`,
      off: own.options.length <= 2,
      take: () => ({ ...own, options: own.options.filter((_, at) => at !== row) }),
    },
  ];
  return (
    <div class="own_steps">
      {steps.map((step) => (
        <button
          key={step.sign}
          class="button own_step"
          type="button"
          aria-label={step.words}
          disabled={step.off}
          onClick={() => onOwn(step.take())}
        >
          {step.sign}
        </button>
      ))}
    </div>
  );
}

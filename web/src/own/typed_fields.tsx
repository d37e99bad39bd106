import { FindingsAt, toldBy } from "./findings";
import type { FieldProps } from "./option_fields";

const SPELLING = [
  ["accept", "a misspelling counts in full, if it can mean nothing else"],
  ["half", "a misspelling counts half"],
  ["exact", "spelling counts: only what is written here is right"],
] as const;

/** A typed answer: every spelling that is right, and what a misspelling is worth. */
export function TypedFields({ own, onOwn, judged }: FieldProps) {
  return (
    <>
      <label class="field">
        <span class="field_label">Right answers, one a line</span>
        <span class="field_hint">
          The first is shown as the key. Case, hyphens and plurals do not matter.
        </span>
        <textarea
          class="field_input"
          rows={3}
          value={own.accepted.join("\n")}
          {...toldBy("accepted", judged)}
          onInput={(event) => onOwn({ ...own, accepted: event.currentTarget.value.split("\n") })}
        />
      </label>
      <FindingsAt field="accepted" judged={judged} />
      <fieldset class="choice">
        <legend class="field_label">Spelling</legend>
        {SPELLING.map(([value, words]) => (
          <label key={value} class="choice_line">
            <input
              type="radio"
              name="own-spelling"
              checked={own.spelling === value}
              onChange={() => onOwn({ ...own, spelling: value })}
            />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
    </>
  );
}

/** Why the key is the key: asked for where there are no options whose reasons say it. */
export function WhyField({ own, onOwn, judged }: FieldProps) {
  const typed = own.format === "typed";
  return (
    <>
      <label class="field">
        <span class="field_label">
          Why {typed ? "this is the answer" : "the key is right (else its own reason)"}
        </span>
        <textarea
          class="field_input"
          rows={2}
          value={own.why}
          {...toldBy("why", judged)}
          onInput={(event) => onOwn({ ...own, why: event.currentTarget.value })}
        />
      </label>
      <FindingsAt field="why" judged={judged} />
    </>
  );
}

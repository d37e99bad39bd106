import { useState } from "preact/hooks";
import { familyWord } from "../desk/family_words";
import type { OwnLibrary } from "../wire";
import { FindingsAt, toldBy } from "./findings";
import type { FieldProps } from "./option_fields";

type Props = FieldProps & { library: OwnLibrary };

/** What the item is about: muscles whose records are shown afterwards, family, region, and how long it takes. */
export function AboutFields(props: Props) {
  const { own, onOwn, judged, library } = props;
  const told = library.muscles.find((one) => one.id === own.muscles[0])?.region;
  return (
    <fieldset class="own_about">
      <legend class="field_label">What it is about</legend>
      <MuscleField {...props} />
      <FindingsAt field="muscles" judged={judged} />
      <label class="field">
        <span>Family</span>
        <select
          class="field_input"
          value={own.family}
          onChange={(event) => onOwn({ ...own, family: event.currentTarget.value as typeof own.family })}
        >
          <option value="own">none of them</option>
          {library.families.map((family) => (
            <option key={family} value={family}>
              {familyWord(family)}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        <span>Region{told !== undefined && " (told by the muscle)"}</span>
        <select
          class="field_input"
          value={told ?? own.region}
          disabled={told !== undefined}
          onChange={(event) => onOwn({ ...own, region: event.currentTarget.value })}
        >
          <option value="">none</option>
          {library.regions.map((region) => (
            <option key={region}>{region}</option>
          ))}
        </select>
      </label>
      <SecondsField {...props} />
      <FindingsAt field="seconds" judged={judged} />
    </fieldset>
  );
}

function SecondsField({ own, onOwn, judged }: FieldProps) {
  return (
    <label class="field">
      <span>Seconds for the round; empty to compute them</span>
      <input
        class="field_input own_seconds"
        type="number"
        inputMode="numeric"
        min={5}
        max={3600}
        value={own.seconds ?? ""}
        {...toldBy("seconds", judged)}
        onInput={(event) => onOwn({ ...own, seconds: secondsIn(event.currentTarget) })}
      />
    </label>
  );
}

function secondsIn(input: HTMLInputElement): number | null {
  return Number.isNaN(input.valueAsNumber) ? null : Math.round(input.valueAsNumber);
}

function MuscleField({ own, onOwn, library }: Props) {
  const [text, setText] = useState("");
  const nameOf = (id: string) => library.muscles.find((one) => one.id === id)?.name ?? id;
  const add = (name: string) => {
    const found = library.muscles.find((one) => one.name.toLowerCase() === name.trim().toLowerCase());
    setText(found ? "" : name);
    if (found && !own.muscles.includes(found.id)) onOwn({ ...own, muscles: [...own.muscles, found.id] });
  };
  return (
    <div class="own_muscles">
      <label class="field">
        <span>Muscles whose records are shown after the round</span>
        <input
          class="field_input"
          list="own-muscles"
          value={text}
          placeholder="begin to write a name"
          onInput={(event) => add(event.currentTarget.value)}
        />
        <datalist id="own-muscles">
          {library.muscles.map((one) => (
            <option key={one.id} value={one.name}>
              {one.region}
            </option>
          ))}
        </datalist>
      </label>
      <ul class="own_chosen">
        {own.muscles.map((id) => (
          <li key={id}>
            {nameOf(id)}
            <button
              class="button own_step"
              type="button"
              aria-label={`Take ${nameOf(id)} out`}
              onClick={() => onOwn({ ...own, muscles: own.muscles.filter((one) => one !== id) })}
            >
              ✕
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

import { useEffect, useState } from "preact/hooks";
import type { Announcer } from "../parts/announcer";
import { Complaint } from "../parts/notice";
import type { OwnItemFace, OwnLibrary } from "../wire";
import { countOf } from "../words/numbers";
import { AboutFields } from "./about_fields";
import { FindingsAt, type Judged, toldBy } from "./findings";
import { type FieldProps, OptionFields } from "./option_fields";
import { PictureField } from "./picture_field";
import { Preview } from "./preview";
import { TypedFields, WhyField } from "./typed_fields";
import { useWriting, type Writing } from "./writing";
import { type Own, toMend, withFormat } from "./written";

const FORMATS: readonly [Own["format"], string][] = [
  ["one_best", "one best answer"],
  ["pick_n", "pick all that are right"],
  ["typed", "typed answer"],
];

/** One item on the table: written at the left, seen as the seat sees it at the right. */
export function Editor(props: {
  face: OwnItemFace | null;
  library: OwnLibrary;
  announcer: Announcer;
  onSaved: (face: OwnItemFace) => void;
}) {
  const writing = useWriting(props.face, props.onSaved, props.announcer);
  const [all, setAll] = useState(props.face !== null);
  const judged: Judged = {
    shown: all ? writing.findings : writing.findings.filter((one) => writing.touched.has(one.field)),
    onTake: writing.take,
  };
  const fields: FieldProps = { own: writing.own, onOwn: writing.change, judged };
  useSaveKey(writing);
  return (
    <div class="own_table">
      <form
        class="own_form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setAll(true);
          void writing.save();
        }}
      >
        {writing.restored && <Restored writing={writing} />}
        <Question {...fields} />
        {writing.own.format === "typed" ? <TypedFields {...fields} /> : <OptionFields {...fields} />}
        <WhyField {...fields} />
        <PictureField {...fields} />
        <AboutFields {...fields} library={props.library} />
        <SaveBar writing={writing} />
      </form>
      <section class="own_beside" aria-label="As the seat sees it">
        <h2 class="start_heading">As the seat sees it</h2>
        <Preview preview={writing.preview} />
      </section>
    </div>
  );
}

function Question({ own, onOwn, judged }: FieldProps) {
  return (
    <>
      <fieldset class="choice own_formats">
        <legend class="field_label">Answered by</legend>
        {FORMATS.map(([format, words]) => (
          <label key={format} class="choice_line">
            <input
              type="radio"
              name="own-format"
              checked={own.format === format}
              onChange={() => onOwn(withFormat(own, format))}
            />
            <span>{words}</span>
          </label>
        ))}
      </fieldset>
      <label class="field">
        <span class="field_label">Question</span>
        <textarea
          class="field_input own_stem"
          rows={2}
          value={own.stem}
          {...toldBy("stem", judged)}
          onInput={(event) => onOwn({ ...own, stem: event.currentTarget.value })}
        />
      </label>
      <FindingsAt field="stem" judged={judged} />
    </>
  );
}

function Restored({ writing }: { writing: Writing }) {
  return (
    <p class="own_restored" role="status">
      What you wrote last time and did not save is back.{" "}
      <button class="button" type="button" onClick={writing.discard}>
        Take what was saved
      </button>
    </p>
  );
}

function SaveBar({ writing }: { writing: Writing }) {
  const open = toMend(writing.findings);
  return (
    <div class="own_save">
      <p role="status" class="own_state">
        {open === 0
          ? "✓ It may be asked."
          : `Not to be asked yet: ${countOf(open, "thing")} to mend or consider.`}
        {writing.saved && " Saved."}
      </p>
      <Complaint text={writing.problem} />
      <a class="button" href="#/">
        All own items
      </a>
      <button class="button button-main" type="submit" disabled={writing.busy}>
        {writing.busy ? "Saving …" : "Save"} <kbd class="own_key_hint">Ctrl S</kbd>
      </button>
    </div>
  );
}

/** Ctrl S saves, as everywhere. */
function useSaveKey(writing: Writing): void {
  useEffect(() => {
    const pressed = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== "s" || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      document.querySelector<HTMLFormElement>(".own_form")?.requestSubmit();
    };
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  }, [writing]);
}

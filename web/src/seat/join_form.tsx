import "../parts/buttons.css";
import "./join_form.css";
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { tidyDoorCode } from "../line/memory";
import { KeepChoice } from "../parts/keep_choice";
import { Complaint } from "../parts/notice";

const LONGEST_HANDLE = 40;

interface JoinFormProps {
  doorCode: string;
  handle: string;
  complaint: string;
  busy: boolean;
  onEnter: (doorCode: string, handle: string) => void;
}

/** Door code and handle: all that is asked at the door. */
export function JoinForm(props: JoinFormProps) {
  const [doorCode, setDoorCode] = useState(props.doorCode);
  const [handle, setHandle] = useState(props.handle);
  const [missing, setMissing] = useState("");
  const enter = (event: Event) => {
    event.preventDefault();
    const lacks = whatIsMissing(doorCode, handle);
    setMissing(lacks);
    if (lacks === "") props.onEnter(tidyDoorCode(doorCode), handle.trim());
  };
  return (
    <form class="join" onSubmit={enter} noValidate>
      <Field id="door-code" label="Door code" hint="five letters, shown on the wall">
        <input
          id="door-code"
          class="field_input join_code"
          value={doorCode}
          onInput={(event) => setDoorCode(event.currentTarget.value)}
          autocapitalize="characters"
          autocomplete="off"
          spellcheck={false}
          enterkeyhint="next"
          aria-describedby="door-code-hint"
        />
      </Field>
      <Field id="handle" label="Handle" hint="any name; everybody may see it">
        <input
          id="handle"
          class="field_input"
          value={handle}
          maxLength={LONGEST_HANDLE}
          onInput={(event) => setHandle(event.currentTarget.value)}
          autocapitalize="words"
          autocomplete="nickname"
          spellcheck={false}
          enterkeyhint="go"
          aria-describedby="handle-hint"
        />
      </Field>
      <KeepChoice />
      <Complaint text={missing || props.complaint} />
      <button class="button button-main" type="submit" disabled={props.busy}>
        {props.busy ? "Entering …" : "Take a seat"}
      </button>
    </form>
  );
}

function Field(props: { id: string; label: string; hint: string; children: ComponentChildren }) {
  return (
    <div class="field">
      <label class="field_label" for={props.id}>
        {props.label}
      </label>
      <span class="field_hint" id={`${props.id}-hint`}>
        {props.hint}
      </span>
      {props.children}
    </div>
  );
}

function whatIsMissing(doorCode: string, handle: string): string {
  if (tidyDoorCode(doorCode) === "") return "The door code is missing: five letters, shown on the wall.";
  if (handle.trim() === "") return "The handle is missing: choose any name.";
  return "";
}

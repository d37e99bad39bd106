import type { ItemFace } from "../wire";
import type { Draft } from "./draft";

const LONGEST_WORDS = 80;

/** One line a term; nothing is corrected or suggested, as on paper. */
export function TypedLines(props: { item: ItemFace; draft: Draft; onDraft: (draft: Draft) => void }) {
  const { item, draft } = props;
  const lines = Array.from({ length: item.pick }, (_, index) => index);
  const write = (at: number, text: string) =>
    props.onDraft({
      choice: [],
      typed: lines.map((line) => (line === at ? text : (draft.typed[line] ?? ""))),
    });
  return (
    <fieldset class="typed" aria-labelledby="stem choose">
      {lines.map((line) => (
        <label key={line} class="typed_line">
          <span class={lines.length > 1 ? "typed_number" : "unseen"}>
            {lines.length > 1 ? line + 1 : "Your answer"}
          </span>
          <input
            class="field_input typed_input"
            value={draft.typed[line] ?? ""}
            maxLength={LONGEST_WORDS}
            onInput={(event) => write(line, event.currentTarget.value)}
            autocapitalize="off"
            autocomplete="off"
            spellcheck={false}
            {...{ autocorrect: "off" }}
            enterkeyhint={line + 1 < lines.length ? "next" : "send"}
          />
        </label>
      ))}
    </fieldset>
  );
}

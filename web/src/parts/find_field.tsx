/** A field that narrows a list down while one types. */
export function FindField(props: {
  label: string;
  hint?: string;
  words: string;
  onWords: (words: string) => void;
}) {
  return (
    <label class="field">
      <span class="field_label">{props.label}</span>
      <input
        class="field_input"
        type="search"
        value={props.words}
        placeholder={props.hint}
        onInput={(event) => props.onWords(event.currentTarget.value)}
      />
    </label>
  );
}

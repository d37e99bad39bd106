import type { Finding } from "../wire";

/** What a field needs to know of the whole form. */
export interface Judged {
  /** What is to be told now. */
  shown: readonly Finding[];
  onTake: (rule: string, taken: boolean) => void;
}

/** The findings at one field, each with what to do; a warning may be let stand. */
export function FindingsAt({ field, judged }: { field: string; judged: Judged }) {
  const here = judged.shown.filter((one) => one.field === field);
  if (here.length === 0) return null;
  return (
    <ul class="findings" id={findingsId(field)}>
      {here.map((one) => (
        <li key={one.rule} class={one.error ? "finding finding-error" : "finding"}>
          <p>
            <b>{one.error ? "✕ To mend: " : one.taken ? "✓ Kept as it is: " : "! To consider: "}</b>
            {one.text}
          </p>
          {!one.error && (
            <label class="choice_line finding_take">
              <input
                type="checkbox"
                checked={one.taken ?? false}
                onChange={(event) => judged.onTake(one.rule, event.currentTarget.checked)}
              />
              <span>Keep it as it is</span>
            </label>
          )}
        </li>
      ))}
    </ul>
  );
}

/** What ties an input to its findings. */
export function toldBy(field: string, judged: Judged) {
  const here = judged.shown.filter((one) => one.field === field);
  if (here.length === 0) return {};
  return { "aria-describedby": findingsId(field), "aria-invalid": here.some((one) => one.error) };
}

function findingsId(field: string): string {
  return `findings-${field.replaceAll(".", "-")}`;
}

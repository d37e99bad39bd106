import { useEffect, useRef } from "preact/hooks";
import { AnswerRows, askText, keyedLetter } from "../../seat/answer_rows";
import { type Draft, shownDraft, withLetter } from "../../seat/draft";
import type { Look } from "../../wire";

/** One station: one prompt, one answer. What is written stands on the sheet at once; nothing is handed in here. */
export function Station(props: {
  look: Look;
  number: number;
  draft: Draft;
  onDraft: (draft: Draft) => void;
  /** Enter at the end of an answer: on to the next station. */
  onEnter: () => void;
  say: (text: string) => void;
}) {
  const { look } = props;
  const form = useRef<HTMLFormElement>(null);
  const draft = shownDraft(look.face, props.draft);
  useStationFocus(form, look.id);
  const byKey = (event: KeyboardEvent) => {
    const letter = keyedLetter(event, look.face);
    if (letter === null) return;
    event.preventDefault();
    props.onDraft(withLetter(draft, letter, look.face));
    form.current?.querySelector<HTMLInputElement>(`input[value="${letter}"]`)?.focus();
  };
  const enter = (event: Event) => {
    event.preventDefault();
    props.onEnter();
  };
  return (
    <form class="answering mock_station" ref={form} onSubmit={enter} onKeyDown={byKey}>
      <h2 class="stem" id="stem" tabIndex={-1}>
        <span class="unseen">Station {props.number}: </span>
        {look.face.stem}
      </h2>
      <p class="answering_ask" id="choose">
        {askText(look.face, draft)}
      </p>
      <AnswerRows item={look.face} draft={draft} onDraft={props.onDraft} say={props.say} />
    </form>
  );
}

/** At each station one may write at once; where there are options the stem has the focus. */
function useStationFocus(form: { current: HTMLFormElement | null }, look: string): void {
  useEffect(() => {
    const line = form.current?.querySelector<HTMLElement>(".typed_input");
    (line ?? form.current?.querySelector<HTMLElement>("#stem"))?.focus({ preventScroll: true });
    window.scrollTo({ top: 0 });
  }, [form, look]);
}

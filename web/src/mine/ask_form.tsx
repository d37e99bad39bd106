import "../seat/answering.css";
import "../parts/buttons.css";
import { useEffect, useRef, useState } from "preact/hooks";
import { ItemPicture } from "../parts/picture";
import { AnswerRows, askText, keyedLetter } from "../seat/answer_rows";
import { type Draft, isEmpty, shownDraft, withLetter } from "../seat/draft";
import type { Look } from "../wire";

const NOTHING: Draft = { choice: [], typed: [] };

/** One look, asked before anything of it is shown. */
export function AskForm(props: {
  look: Look;
  /** Takes the answer and how long it took (ms) since the stem was shown. */
  onAnswer: (draft: Draft, tookMs: number) => void;
  /** Says something aloud. */
  say: (text: string) => void;
}) {
  const { look } = props;
  const [kept, setDraft] = useState(NOTHING);
  const draft = shownDraft(look.face, kept);
  const form = useRef<HTMLFormElement>(null);
  const since = useShownSince(form);
  const handIn = (event: Event) => {
    event.preventDefault();
    if (!isEmpty(draft)) props.onAnswer(draft, performance.now() - since.current);
  };
  const byKey = (event: KeyboardEvent) => {
    if (event.key === "Enter" && event.target instanceof HTMLHeadingElement) return handIn(event);
    const letter = keyedLetter(event, look.face);
    if (letter === null) return;
    event.preventDefault();
    setDraft(withLetter(draft, letter, look.face));
    form.current?.querySelector<HTMLInputElement>(`input[value="${letter}"]`)?.focus();
  };
  return (
    <form class="answering" ref={form} onSubmit={handIn} onKeyDown={byKey}>
      <h1 class="stem" id="stem" tabIndex={-1}>
        {look.face.stem}
      </h1>
      {look.face.picture && <ItemPicture picture={look.face.picture} />}
      <p class="answering_ask" id="choose">
        {askText(look.face, draft)}
      </p>
      <AnswerRows item={look.face} draft={draft} onDraft={setDraft} say={props.say} />
      <div class="hand_in">
        <button
          class="button"
          type="button"
          onClick={() => props.onAnswer(NOTHING, performance.now() - since.current)}
        >
          I do not know
        </button>
        <button class="button button-main hand_in_button" type="submit" aria-disabled={isEmpty(draft)}>
          Hand in
        </button>
      </div>
    </form>
  );
}

/** When the stem came on the page; the focus goes to it, so that keys and screen readers begin there. */
function useShownSince(form: { current: HTMLFormElement | null }): { current: number } {
  const since = useRef(performance.now());
  useEffect(() => {
    since.current = performance.now();
    window.scrollTo({ top: 0 });
    form.current?.querySelector<HTMLElement>("#stem")?.focus({ preventScroll: true });
  }, [form]);
  return since;
}

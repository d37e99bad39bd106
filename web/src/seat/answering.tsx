import "./answering.css";
import "../parts/buttons.css";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { useStore } from "../line/store";
import { ItemPicture } from "../parts/picture";
import type { AnswerFace, ItemFace, PublicView } from "../wire";
import { AnswerRows, askText, keyedLetter } from "./answer_rows";
import { CertaintyChoice } from "./certainty_choice";
import {
  type Draft,
  draftText,
  isEmpty,
  sameDraft,
  shownDraft,
  useDraft,
  withLetter,
  written,
} from "./draft";
import type { Handed, HandIn } from "./hand_in";

interface AnsweringProps {
  view: PublicView;
  item: ItemFace;
  known: AnswerFace | null;
  hands: HandIn;
  /** Says something aloud. */
  say: (text: string) => void;
  /** Whether it is answered again, after talking. */
  again?: boolean;
  /** Stands between the stem and what is asked. */
  children?: ComponentChildren;
}

/** An open round at the seat: the stem, the options, and what became of one's answer. */
export function Answering(props: AnsweringProps) {
  const { item, again = false } = props;
  const handed = ofRound(useStore(props.hands.handed), item.round, again);
  const [kept, setDraft] = useDraft(item, handed ? asFace(handed) : props.known, props.view.door_code, again);
  const draft = shownDraft(item, kept);
  const form = useRef<HTMLFormElement>(null);
  useRoundFocus(form, item.round);
  const handIn = (event: Event) => {
    event.preventDefault();
    if (!isEmpty(draft) && !isDone(item, draft, handed, props.known)) {
      const said = [item.round, draft.choice, written(draft)] as const;
      const { certainty } = draft;
      if (again) void props.hands.handIn(...said, certainty ?? undefined, true);
      else void (certainty ? props.hands.handIn(...said, certainty) : props.hands.handIn(...said));
    }
  };
  const byKey = (event: KeyboardEvent) => {
    if (event.key === "Enter" && event.target instanceof HTMLHeadingElement) return handIn(event);
    const letter = keyedLetter(event, item);
    if (letter === null) return;
    event.preventDefault();
    setDraft(withLetter(draft, letter, item));
    form.current?.querySelector<HTMLInputElement>(`input[value="${letter}"]`)?.focus();
  };
  return (
    <form class="answering" ref={form} onSubmit={handIn} onKeyDown={byKey}>
      <h1 class="stem" id="stem" tabIndex={-1}>
        {item.stem}
      </h1>
      {props.children}
      {item.picture && <ItemPicture picture={item.picture} />}
      <p class="answering_ask" id="choose">
        {askText(item, draft)}
      </p>
      <AnswerRows item={item} draft={draft} onDraft={setDraft} say={props.say} />
      {props.view.asks_certainty && (
        <CertaintyChoice
          chosen={draft.certainty ?? null}
          onChoose={(certainty) => setDraft({ ...draft, certainty })}
        />
      )}
      <HandInBar view={props.view} item={item} draft={draft} handed={handed} known={props.known} />
    </form>
  );
}

interface BarProps {
  view: PublicView;
  item: ItemFace;
  draft: Draft;
  handed: Handed | null;
  known: AnswerFace | null;
}

function HandInBar(props: BarProps) {
  const { item, draft, handed, known } = props;
  const done = isDone(item, draft, handed, known);
  const disabled = isEmpty(draft) || done;
  return (
    <div class="hand_in">
      <p class="hand_in_state">{stateText(props)}</p>
      <button class="button button-main hand_in_button" type="submit" aria-disabled={disabled}>
        {buttonText(done, handed)}
      </button>
    </div>
  );
}

function buttonText(done: boolean, handed: Handed | null): string {
  if (!done) return "Hand in";
  return handed === null || handed.state === "received" ? "Handed in" : "On its way";
}

function stateText({ view, item, draft, handed, known }: BarProps): string {
  if (handed?.state === "refused") return handed.text;
  if (handed?.state === "sending") return "Handing in …";
  if (handed?.state === "kept") return "Not through yet: your answer is kept and goes out by itself.";
  const received = handed?.answer ?? known;
  if (received === null) return isEmpty(draft) ? "" : "Not handed in yet.";
  const text = answerText(asDraft(received));
  if (!isDone(item, draft, handed, known)) return `Handed in: ${text}. Your change is not handed in yet.`;
  const until = view.phase === "stations" ? "the bell" : "the round closes";
  return `✓ Answer received: ${text}. You may change it until ${until}.`;
}

function answerText(draft: Draft): string {
  return draft.certainty ? `${draftText(draft)}, certainty ${draft.certainty}` : draftText(draft);
}

/** Whether just this draft has been handed in already. */
function isDone(item: ItemFace, draft: Draft, handed: Handed | null, known: AnswerFace | null): boolean {
  if (handed !== null) return handed.state !== "refused" && sameDraft(item, draft, asDraft(handed.answer));
  return sameDraft(item, draft, known);
}

function asDraft(answer: Partial<Draft>): Draft {
  return {
    choice: answer.choice ?? [],
    typed: answer.typed ?? [],
    ...(answer.certainty && { certainty: answer.certainty }),
  };
}

function asFace(handed: Handed): AnswerFace {
  const { choice, typed, certainty = null } = asDraft(handed.answer);
  return { round: handed.answer.round, choice: [...choice], typed: [...typed], certainty };
}

function ofRound(handed: Handed | null, round: number, again: boolean): Handed | null {
  const isOfThis = handed?.answer.round === round && Boolean(handed.answer.again) === again;
  return isOfThis ? handed : null;
}

/** At a new round the focus goes to the stem, so that keys and screen readers begin there. */
function useRoundFocus(form: { current: HTMLFormElement | null }, round: number): void {
  useEffect(() => {
    const focused = document.activeElement;
    if (focused === null || focused === document.body)
      form.current?.querySelector<HTMLElement>("#stem")?.focus({ preventScroll: true });
    window.scrollTo({ top: 0 });
  }, [form, round]);
}

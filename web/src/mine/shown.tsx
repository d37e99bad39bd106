import "../seat/closed.css";
import "./look.css";
import { useEffect, useRef } from "preact/hooks";
import { ItemPicture } from "../parts/picture";
import { RecordPlate } from "../record/record_plate";
import type { Look, MissedFace } from "../wire";
import { dayOf } from "../words/dates";
import { keyWords, listed } from "../words/numbers";
import type { Given } from "./look_box";
import { answerWords, knownOf, LOOK_MARK, verdictText } from "./outcome";
import { SolutionRows } from "./solution_rows";

/** What is shown once a look is answered: the verdict, the contrast to what was chosen then, the record. */
export function Shown(props: {
  look: Look;
  given: Given;
  lost: boolean;
  /** The next step, at the foot. The page of results has none, and says itself what was asked and answered. */
  next?: { text: string; go: () => void };
}) {
  const { look, given } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  const inFlow = props.next !== undefined;
  useEffect(() => {
    if (!inFlow) return;
    window.scrollTo({ top: 0 });
    heading.current?.focus({ preventScroll: true });
  }, [inFlow]);
  return (
    <div class="closed look_shown">
      {inFlow && (
        <h1 class="stem" tabIndex={-1} ref={heading}>
          {look.face.stem}
        </h1>
      )}
      {look.face.picture && <ItemPicture picture={look.face.picture} />}
      {inFlow && <VerdictBox look={look} given={given} lost={props.lost} />}
      <Why look={look} />
      {look.missed && <Then missed={look.missed} contrast={look.solution.contrast} />}
      <SolutionRows solution={look.solution} chosen={given.answer.choice} />
      {look.solution.records.map((record) => (
        <RecordPlate key={record.muscle} record={record} />
      ))}
      {inFlow && !look.flag && <p class="look_caution">{NO_HOST}</p>}
      <Cautions texts={look.solution.cautions} />
      {props.next && (
        <div class="hand_in">
          <p class="hand_in_state">{look.label}</p>
          <button class="button button-main hand_in_button" type="button" onClick={props.next.go}>
            {props.next.text}
          </button>
        </div>
      )}
    </div>
  );
}

const NO_HOST =
  "No host reads flags of this item: it was dealt for you alone. If it looks wrong, tell your teacher.";

function VerdictBox({ look, given, lost }: { look: Look; given: Given; lost: boolean }) {
  const known = knownOf(look, given);
  const words = answerWords(look, given.answer);
  return (
    <section class="own" aria-label="Your answer">
      <p class="verdict">
        <span class="verdict_mark" aria-hidden="true">
          {known ? LOOK_MARK[known.verdict] : "…"}
        </span>
        <b>{known ? verdictText(known) : unmarkedText(lost)}</b>
      </p>
      <p class="own_reason">
        You: <span class="own_choice">{words.length > 0 ? listed(words) : "no answer"}</span>
      </p>
      <p>
        The key: <span class="own_choice">{keyWords(look.solution.key_text, look.face.pick)}</span>
      </p>
      {known?.because && <p class="own_reason">{known.because}</p>}
      {known?.due && <p class="own_reason">Asked again on {known.due}.</p>}
    </section>
  );
}

function Why({ look }: { look: Look }) {
  return (
    <p class="look_why">
      <b>Why:</b> {look.solution.why}
    </p>
  );
}

function unmarkedText(lost: boolean): string {
  return lost ? "kept; marked when you are back on line" : "being marked …";
}

function Then({ missed, contrast }: { missed: MissedFace; contrast: string | null }) {
  return (
    <section class="then" aria-label="In the review">
      <h2 class="then_heading">
        {missed.title}, {dayOf(missed.at)}
      </h2>
      <p class="then_stem">{missed.stem}</p>
      <p>
        Then you: <b>{missed.chosen || "no answer"}</b> · key: <b>{listed(missed.key_text)}</b>
      </p>
      {contrast && <p class="then_contrast">{contrast}</p>}
    </section>
  );
}

export function Cautions({ texts }: { texts: readonly string[] }) {
  return (
    <>
      {texts.map((text) => (
        <p key={text} class="look_caution">
          {text}
        </p>
      ))}
    </>
  );
}

import "./bench.css";
import { useEffect, useState } from "preact/hooks";
import type { Line } from "../line/line";
import { useStore } from "../line/store";
import { Complaint } from "../parts/notice";
import { AnswerRows, askText } from "../seat/answer_rows";
import { Answering } from "../seat/answering";
import { type Draft, draftText, isEmpty, sameDraft, shownDraft, written } from "../seat/draft";
import { useOrders } from "../seat/group_orders";
import type { HandIn } from "../seat/hand_in";
import type { AnswerFace, ItemFace, OwnBench, PublicView } from "../wire";

interface RoundProps {
  view: PublicView;
  item: ItemFace;
  known: AnswerFace | null;
  bench: OwnBench;
  hands: HandIn;
  line: Line;
  say: (text: string) => void;
}

/** A round at a bench: first by oneself; once that is handed in, with the bench. */
export function AnsweringAtBench(props: RoundProps) {
  const { view, item, known, bench, hands, say } = props;
  const handed = useStore(hands.handed);
  const [changing, change] = useState(0);
  const through = handed?.state === "received" && handed.answer.round === item.round;
  const answered = known !== null || through || bench.answer !== null;
  if (answered && changing !== item.round) {
    const own = through ? handed.answer : known;
    return (
      <BenchForm
        key={item.round}
        {...props}
        start={{ choice: own?.choice ?? [], typed: own?.typed ?? [] }}
        onChange={() => change(item.round)}
      />
    );
  }
  return (
    <>
      <p class="bench_note">
        First by yourself, without talking. Then your bench,{" "}
        <b>
          <bdi>{bench.bench}</bdi>
        </b>
        , hands in together.
        {answered && (
          <button class="button bench_switch" type="button" onClick={() => change(0)}>
            Go on with the bench
          </button>
        )}
      </p>
      <Answering view={view} item={item} known={known} hands={hands} say={say} />
    </>
  );
}

function BenchForm(props: RoundProps & { start: Draft; onChange: () => void }) {
  const { item, bench, line, say } = props;
  const orders = useOrders(line);
  useEffect(() => window.scrollTo({ top: 0 }), []);
  // what a mate hands in is shown as long as nothing else has been chosen here
  const [kept, setDraft] = useState<Draft | null>(null);
  const draft = shownDraft(item, kept ?? bench.answer ?? props.start);
  const done = sameDraft(item, draft, bench.answer);
  const handIn = async (event: Event) => {
    event.preventDefault();
    if (isEmpty(draft) || done) return;
    const answer = { round: item.round, choice: [...draft.choice], typed: written(draft) };
    if (await orders.give({ type: "answer_for_bench", ...answer })) say(`Handed in for ${bench.bench}.`);
  };
  return (
    <form class="answering" onSubmit={(event) => void handIn(event)}>
      <div class="bench_note">
        <p>
          <bdi class="bench_name">{bench.bench}</bdi>: {bench.answered_alone} of {bench.members} have answered
          by themselves. Talk, then one of you hands in for all.
        </p>
        {bench.answer === null && (
          <button class="button bench_switch" type="button" onClick={props.onChange}>
            Change my own answer
          </button>
        )}
      </div>
      <h1 class="stem" id="stem" tabIndex={-1}>
        {item.stem}
      </h1>
      <p class="answering_ask" id="choose">
        {askText(item, draft)}
      </p>
      <AnswerRows item={item} draft={draft} onDraft={setDraft} say={say} />
      <Complaint text={orders.complaint} />
      <div class="hand_in">
        <p class="hand_in_state">{stateText(bench, orders.waiting, done)}</p>
        <button
          class="button button-main hand_in_button"
          type="submit"
          aria-disabled={isEmpty(draft) || done || orders.waiting}
        >
          {done ? "Handed in" : "Hand in for the bench"}
        </button>
      </div>
    </form>
  );
}

function stateText(bench: OwnBench, waiting: boolean, done: boolean): string {
  if (waiting) return "Handing in …";
  if (bench.answer === null) return "Your bench has not handed in yet.";
  const text = draftText({ choice: bench.answer.choice, typed: bench.answer.typed });
  return done
    ? `✓ Handed in for ${bench.bench}: ${text}.`
    : `Handed in for ${bench.bench}: ${text}. Your change is not handed in yet.`;
}

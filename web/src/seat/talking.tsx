import "./talking.css";
import type { AnswerFace, ItemFace, OwnView, PublicView } from "../wire";
import { Answering } from "./answering";
import { draftText } from "./draft";
import type { HandIn } from "./hand_in";
import { OwnAnswer } from "./own_answer";

/** A round that is talked over, and then answered again. */
export function TalkPhase(props: {
  view: PublicView;
  item: ItemFace;
  own: OwnView | null;
  hands: HandIn;
  say: (text: string) => void;
}) {
  const { view, item, own } = props;
  if (own && own.from_round > view.round) return <WatchingTalk item={item} from={own.from_round} />;
  return view.phase === "talking" ? (
    <Talking view={view} item={item} own={own} />
  ) : (
    <AnsweringAgain {...props} />
  );
}

/** Whoever came in after the first answering watches this round, and answers from the next one on. */
function WatchingTalk({ item, from }: { item: ItemFace; from: number }) {
  return (
    <div class="closed">
      <h1 class="stem" id="stem" tabIndex={-1}>
        {item.stem}
      </h1>
      <p class="closed_key">You came in after this round had been answered.</p>
      <OwnAnswer item={item} answer={nothing(item.round)} />
      <p class="verdict_bar">You answer from round {from} on.</p>
    </div>
  );
}

/** While neighbours talk: the item, one's own first answer, and nothing of right or wrong. */
function Talking({ view, item, own }: { view: PublicView; item: ItemFace; own: OwnView | null }) {
  const first = own?.answer?.round === view.round ? own.answer : null;
  return (
    <div class="closed">
      <p class="talk_ask">Talk with your neighbour. Say why you chose what you chose.</p>
      <h1 class="stem" id="stem" tabIndex={-1}>
        {item.stem}
      </h1>
      <p class="closed_key">{first ? "Your first answer:" : "You handed in no first answer."}</p>
      <OwnAnswer item={item} answer={first ?? nothing(view.round)} />
      <p class="verdict_bar">Then you answer once more. Your first answer counts for marks.</p>
    </div>
  );
}

/** The same item once more, with the first answer in sight. */
function AnsweringAgain(props: {
  view: PublicView;
  item: ItemFace;
  own: OwnView | null;
  hands: HandIn;
  say: (text: string) => void;
}) {
  const { view, item, own, hands, say } = props;
  const first = own?.answer?.round === view.round ? own.answer : null;
  const second = own?.second?.round === view.round ? own.second : null;
  return (
    <Answering
      key={`${view.round} again`}
      view={view}
      item={item}
      known={second}
      hands={hands}
      say={say}
      again
    >
      <p class="talk_first">
        <b>Answer again.</b> {first ? `Your first answer: ${firstText(first)}.` : "You gave no first answer."}{" "}
        Only the first counts for marks.
      </p>
    </Answering>
  );
}

function firstText(first: AnswerFace): string {
  const text = draftText({ choice: first.choice, typed: first.typed });
  return first.certainty ? `${text}, certainty ${first.certainty}` : text;
}

function nothing(round: number): AnswerFace {
  return { round, choice: [], typed: [] };
}

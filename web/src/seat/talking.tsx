import "./talking.css";
import type { AnswerFace, ItemFace, OwnView, PublicView } from "../wire";
import { Answering } from "./answering";
import { draftText } from "./draft";
import type { HandIn } from "./hand_in";
import { OwnAnswer } from "./own_answer";

/** While neighbours talk: the item, one's own first answer, and nothing of right or wrong. */
export function Talking({ view, item, own }: { view: PublicView; item: ItemFace; own: OwnView | null }) {
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
export function AnsweringAgain(props: {
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

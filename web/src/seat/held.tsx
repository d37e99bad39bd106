import "./closed.css";
import { ItemPicture } from "../parts/picture";
import type { ItemFace, OwnView, PublicView } from "../wire";
import { HELD } from "../words/verdicts";
import { OwnAnswer } from "./own_answer";

/** A closed round whose result the host has not shown yet: the own answer, and nothing of right or wrong. */
export function Held({ view, item, own }: { view: PublicView; item: ItemFace; own: OwnView | null }) {
  const answer = own?.answer?.round === view.round ? own.answer : null;
  return (
    <div class="closed">
      <h1 class="stem" id="stem" tabIndex={-1}>
        {item.stem}
      </h1>
      {item.picture && <ItemPicture picture={item.picture} />}
      <p class="closed_key">{answer ? "What you handed in:" : "You handed in no answer."}</p>
      {answer && <OwnAnswer item={item} answer={answer} />}
      <p class="verdict_bar">Round closed. {HELD}</p>
    </div>
  );
}

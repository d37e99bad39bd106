import "./gathering.css";
import { TakeBench } from "../bench/take_bench";
import type { Line } from "../line/line";
import type { OwnView, PublicView } from "../wire";
import { countOf } from "../words/numbers";
import { ClaimPanel } from "./claim_panel";
import { KeptPanel } from "./kept_panel";

/** In the seat before the first round. */
export function Gathering(props: {
  view: PublicView;
  own: OwnView | null;
  line: Line;
  say: (text: string) => void;
}) {
  const { view, own, line, say } = props;
  return (
    <div class="gathering">
      <h1 class="stem" id="stem" tabIndex={-1}>
        You are in
      </h1>
      {own && (
        <p class="gathering_handle">
          <bdi>{own.handle}</bdi>
        </p>
      )}
      <p class="gathering_soft">{view.course}</p>
      {own?.claim && <ClaimPanel claim={own.claim} line={line} say={say} />}
      {view.benches && own?.bench && <TakeBench benches={view.benches} own={own.bench} line={line} />}
      <p class="gathering_soft">
        {view.players > 1 ? `${countOf(view.players, "player")} are here. ` : ""}
        The first round appears by itself. You may lock the phone: your seat is kept.
      </p>
      {own && <KeptPanel own={own} line={line} say={say} />}
    </div>
  );
}

/** After somebody who may has sent this player out. */
export function SentOut({ by }: { by: string }) {
  return (
    <main class="door">
      <h1 class="door_title">You are not in this room any more</h1>
      <p class="door_text">{by} has sent this seat out. If that was a mistake, ask, and come in again.</p>
      <p class="door_aside">
        <a href="/">To the door</a>
      </p>
    </main>
  );
}

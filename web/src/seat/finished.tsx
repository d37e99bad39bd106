import "./finished.css";
import type { OwnView, PublicView } from "../wire";
import { countOf, listed, marksText } from "../words/numbers";
import { keptRounds, type PastRound } from "./history";

/** The end of the review at the seat: one's total, the place if standings are on, the rounds to read again. */
export function Finished({ view, own }: { view: PublicView; own: OwnView | null }) {
  const rounds = keptRounds(view.door_code);
  return (
    <div class="finished">
      <h1 class="stem" id="stem" tabIndex={-1}>
        The review is finished
      </h1>
      {own && <Total own={own} players={view.players} />}
      {rounds.length > 0 && (
        <section>
          <h2 class="finished_heading">Your rounds</h2>
          <ol class="past">
            {rounds.map((round) => (
              <PastItem key={round.round} round={round} />
            ))}
          </ol>
        </section>
      )}
      {view.cautions.map((caution) => (
        <p key={caution} class="finished_caution">
          {caution}
        </p>
      ))}
    </div>
  );
}

function Total({ own, players }: { own: OwnView; players: number }) {
  return (
    <p class="total">
      <span class="total_marks">
        {marksText(own.marks)} <span class="total_of">of {countOf(own.of, "mark")}</span>
      </span>
      {own.place !== null && (
        <span>
          place {own.place} among {countOf(players, "player")}
        </span>
      )}
      {own.from_round > 1 && <span>You joined at round {own.from_round}; your marks count from there.</span>}
    </p>
  );
}

function PastItem({ round }: { round: PastRound }) {
  return (
    <li class="past_round">
      <span class="past_number">{round.round}</span>
      <div>
        <p class="past_stem">{round.stem}</p>
        <p>
          key: <b>{listed(round.key)}</b>
        </p>
        <p class="past_answer">{round.answer.length ? `you: ${listed(round.answer)}` : "you: no answer"}</p>
      </div>
    </li>
  );
}

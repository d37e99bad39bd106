import "./finished.css";
import type { ComponentChildren } from "preact";
import { BenchTotal } from "../bench/bench_result";
import type { Line } from "../line/line";
import { SurenessTable, surenessWords } from "../parts/sureness_table";
import type { OwnRound, OwnView, PublicView, Sureness } from "../wire";
import { countOf, keyWords, listed, marksText, marksWord } from "../words/numbers";
import { VERDICT_MARK, VERDICT_WORD } from "../words/verdicts";
import { ClaimPanel } from "./claim_panel";
import { GroupStandings } from "./group_standings";
import { keptRounds, type PastRound } from "./history";
import { KeptPanel } from "./kept_panel";
import { PastFlag } from "./past_flag";
import { SecondLookLink } from "./second_look_link";

/** The end of the review at the seat: one's total, the place if standings are on, the rounds to read again. */
export function Finished(props: {
  view: PublicView;
  own: OwnView | null;
  line: Line;
  say: (text: string) => void;
}) {
  const { view, own, line, say } = props;
  const rounds = keptRounds(view.door_code);
  return (
    <div class="finished">
      <h1 class="stem" id="stem" tabIndex={-1}>
        The review is finished
      </h1>
      {own && <Total own={own} players={view.benches ? null : view.players} />}
      {own?.sureness && own.sureness.answers > 0 && <OwnSureness sureness={own.sureness} />}
      {own?.claim && <ClaimPanel claim={own.claim} line={line} say={say} />}
      {own?.kept && <SecondLookLink own={own} />}
      {own && <KeptPanel own={own} line={line} say={say} />}
      {own && view.benches && <BenchTotal own={own} benches={view.benches} />}
      {view.group && view.standings && (
        <GroupStandings rows={view.standings} own={own?.bench?.bench || own?.handle || ""} />
      )}
      {rounds.length > 0 && (
        <section>
          <h2 class="finished_heading">Your rounds</h2>
          <ol class="past">
            {rounds.map((round) => (
              <PastItem key={round.round} round={round} outcome={outcomeOf(own, round.round)}>
                {own && !view.group && <PastFlag round={round.round} own={own} line={line} say={say} />}
              </PastItem>
            ))}
          </ol>
        </section>
      )}
      {view.group && (
        <p>
          <a href="/group">Open another room</a>
        </p>
      )}
      <p>
        <a href="/records">Look things up in the records</a>
      </p>
      {view.cautions.map((caution) => (
        <p key={caution} class="finished_caution">
          {caution}
        </p>
      ))}
    </div>
  );
}

function OwnSureness({ sureness }: { sureness: Sureness }) {
  return (
    <section>
      <h2 class="finished_heading">Your certainty: {surenessWords(sureness)}</h2>
      <SurenessTable sureness={sureness} whose="You" />
    </section>
  );
}

function Total({ own, players }: { own: OwnView; players: number | null }) {
  return (
    <p class="total">
      <span class="total_marks">
        {marksText(own.marks)} <span class="total_of">of {countOf(own.of, "mark")}</span>
      </span>
      {own.place !== null && players !== null && (
        <span>
          place {own.place} among {countOf(players, "player")}
        </span>
      )}
      {own.from_round > 1 && <span>You joined at round {own.from_round}; your marks count from there.</span>}
    </p>
  );
}

/** How the round stands now: a strike or a ruling of the host may have changed it since. */
function outcomeOf(own: OwnView | null, round: number): OwnRound | undefined {
  return own?.rounds.find((one) => one.round === round);
}

function PastItem(props: { round: PastRound; outcome: OwnRound | undefined; children: ComponentChildren }) {
  const { round, outcome } = props;
  return (
    <li class="past_round">
      <span class="past_number">{round.round}</span>
      <div>
        <p class="past_stem">{round.stem}</p>
        <p>
          key: <b>{keyWords(round.key, round.pick)}</b>
        </p>
        <p class="past_answer">
          {round.answer.length ? `you: ${listed(round.answer)}` : "you: no answer"}
          {outcome && <Outcome outcome={outcome} />}
        </p>
        {props.children}
      </div>
    </li>
  );
}

function Outcome({ outcome }: { outcome: OwnRound }) {
  const counted = outcome.verdict === "right" || outcome.verdict === "part" || outcome.verdict === "wrong";
  return (
    <span class="past_outcome">
      <span aria-hidden="true">{VERDICT_MARK[outcome.verdict]}</span> {VERDICT_WORD[outcome.verdict]}
      {counted && ` · ${marksWord(outcome.mark)}`}
    </span>
  );
}

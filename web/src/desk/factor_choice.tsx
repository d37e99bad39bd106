import "./own_time.css";
import type { Draft } from "../line/line";
import type { DeskView, RosterRow } from "../wire";
import { type FactorPercent, factorWords } from "../words/factor";

const FACTORS: readonly FactorPercent[] = [100, 150, 200];

/** How long a player may answer, and what that needs: held results. */
export function FactorChoice(props: {
  view: DeskView;
  factor: FactorPercent;
  /** The least that makes sense here: a link always brings more. */
  least: FactorPercent;
  onFactor: (factor: FactorPercent) => void;
}) {
  const { view, factor } = props;
  if (!view.can_keep_own_time) return <p class="choice_note">{whyNot(view)}</p>;
  return (
    <fieldset class="field factor">
      <legend class="field_label">Time to answer</legend>
      {FACTORS.filter((one) => one >= props.least).map((one) => (
        <label key={one} class="choice_line">
          <input type="radio" name="factor" checked={factor === one} onChange={() => props.onFactor(one)} />
          <span>{one === 100 ? "as long as everybody" : `${factorWords(one)} as long`}</span>
        </label>
      ))}
      <p class="choice_note">
        {factor > 100 && !view.holds_results
          ? "With this, results are held from now on until you show them, so that nobody sees who answers later."
          : "Nobody else in the room can see this."}
      </p>
    </fieldset>
  );
}

function whyNot(view: DeskView): string {
  return view.timing === "untimed"
    ? "Rounds have no limit here: everybody has the time they need."
    : "Benches go through the rounds together here, so nobody can have more time alone. Choose rounds without a limit.";
}

/** What has to be said so that a factor counts: hold results first, where they are not held yet. */
export function holdingDrafts(view: DeskView, factor: FactorPercent): Draft[] {
  return factor > 100 && !view.holds_results ? [{ type: "hold_results", on: true }] : [];
}

/** The orders that give a player this factor; none where nothing changes. */
export function factorDrafts(view: DeskView, row: RosterRow, factor: FactorPercent): Draft[] {
  if (factor === row.factor_percent) return [];
  const set = { type: "set_time_factor" as const, player: row.player, factor_percent: factor };
  return [...holdingDrafts(view, factor), set];
}

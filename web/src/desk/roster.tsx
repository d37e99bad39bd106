import "./roster.css";
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Draft } from "../line/line";
import { SurenessTable } from "../parts/sureness_table";
import type { DeskSettings, DeskView, RosterRow } from "../wire";
import { factorFigures } from "../words/factor";
import { marksText } from "../words/numbers";
import { BenchNames } from "./bench_names";
import { ReviewChanges } from "./changes_list";
import { CreditPanel } from "./credit_panel";
import { MoreTime } from "./more_time";
import { PlayerDialog } from "./player_dialog";

/** Who is in the room, who has answered, and the standings' switch. */
export function Roster(props: {
  view: DeskView;
  settings: DeskSettings | null;
  onOrder: (draft: Draft) => Promise<boolean>;
}) {
  const { view, settings, onOrder } = props;
  const [chosen, choose] = useState<RosterRow | null>(null);
  return (
    <aside class="roster" aria-label="Roster">
      <Switch on={view.standings} draft={(on) => ({ type: "show_standings", on })} onOrder={onOrder}>
        standings on the wall
      </Switch>
      <Switch on={view.holds_results} draft={(on) => ({ type: "hold_results", on })} onOrder={onOrder}>
        results held until shown
      </Switch>
      {/* names and files are for nobody but the owner of the review */}
      <CreditPanel view={view} owns={settings?.host?.role === "owner"} />
      <MoreTime view={view} onOrder={onOrder} joinAddress={settings?.join_address ?? location.origin} />
      <ClassSureness view={view} />
      {view.public.stations && !view.public.stations.over && <BenchPlaces stations={view.public.stations} />}
      {view.public.benches && <RosterBenches view={view} onOrder={onOrder} />}
      {view.roster.length === 0 && <p class="choice_note">Nobody is here yet.</p>}
      <RosterRows rows={view.roster} onChoose={choose} />
      <ReviewChanges view={view} />
      {chosen && <PlayerDialog row={chosen} view={view} onOrder={onOrder} onDone={() => choose(null)} />}
    </aside>
  );
}

/** Everybody by handle, with their marks. */
function RosterRows({ rows, onChoose }: { rows: RosterRow[]; onChoose: (row: RosterRow) => void }) {
  return (
    <ul class="roster_list">
      {rows.map((row) => (
        <li key={row.player}>
          <button class="roster_row" type="button" onClick={() => onChoose(row)}>
            <span class="roster_mark">
              <span aria-hidden="true">{row.answered ? "✓" : "·"}</span>
              <span class="unseen">{row.answered ? "answered" : "not yet"}</span>
            </span>
            <span class="roster_who">
              <bdi class="roster_handle">{row.handle}</bdi>
              {row.bench && (
                <span class="roster_bench">
                  <span class="unseen">at bench </span>
                  <bdi>{row.bench}</bdi>
                </span>
              )}
            </span>
            <span class="roster_marks">
              {row.takes_time && (
                <span class="roster_factor">
                  + <span class="unseen">takes more </span>time
                </span>
              )}
              {row.factor_percent > 100 && (
                <span class="roster_factor">
                  {factorFigures(row.factor_percent)}
                  <span class="unseen"> time</span>
                </span>
              )}
              {marksText(row.marks)}/{row.of}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}

/** How certain the class was, folded away until it is asked for. */
function ClassSureness({ view }: { view: DeskView }) {
  if (!view.sureness || view.sureness.answers === 0) return null;
  return (
    <details class="roster_sureness">
      <summary>Certainty of the class</summary>
      <SurenessTable sureness={view.sureness} whose="The class" narrow />
    </details>
  );
}

/** At which station each bench is. */
function BenchPlaces({ stations }: { stations: NonNullable<DeskView["public"]["stations"]> }) {
  return (
    <section class="roster_stations" aria-label="Benches at stations">
      <b>
        Turn {stations.turn} of {stations.of}
      </b>
      <ul>
        {stations.rows.map((row) => (
          <li key={row.bench}>
            <bdi>{row.bench}</bdi>: <b class="roster_station">station {row.item}</b>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What is unwise about the benches, and the draw. */
function RosterBenches({ view, onOrder }: { view: DeskView; onOrder: (draft: Draft) => Promise<boolean> }) {
  const early = view.public.phase === "gathering";
  return (
    <>
      <BenchNames rows={view.public.benches?.rows ?? []} onOrder={onOrder} />
      {early &&
        view.bench_warnings.map((warning) => (
          <p key={warning} class="choice_note">
            {warning}
          </p>
        ))}
      {early && view.public.benches?.how === "drawn" && (
        <button class="button" type="button" onClick={() => void onOrder({ type: "draw_benches" })}>
          Draw the benches
        </button>
      )}
    </>
  );
}

/** A choice for the rest of the review; until the view tells it, the switch shows what was last asked for. */
function Switch(props: {
  on: boolean;
  draft: (on: boolean) => Draft;
  onOrder: (draft: Draft) => Promise<boolean>;
  children: ComponentChildren;
}) {
  const [wish, keep] = useState<boolean | null>(null);
  return (
    <label class="choice_line roster_switch">
      <input
        type="checkbox"
        checked={wish ?? props.on}
        onChange={async (event) => {
          const asked = event.currentTarget.checked;
          keep(asked);
          if (!(await props.onOrder(props.draft(asked)))) keep(!asked);
        }}
      />
      <span>{props.children}</span>
    </label>
  );
}

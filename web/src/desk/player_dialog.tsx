import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { DeskView, RosterRow } from "../wire";
import type { FactorPercent } from "../words/factor";
import { FactorChoice, factorDrafts } from "./factor_choice";

/** One player: another handle, or out of the room. */
export function PlayerDialog(props: {
  row: RosterRow;
  view: DeskView;
  onOrder: (draft: Draft) => Promise<boolean>;
  onDone: () => void;
}) {
  const { row, view, onOrder, onDone } = props;
  const benches = view.public.benches?.rows.map((one) => one.bench) ?? null;
  const [handle, setHandle] = useState(row.handle);
  const [bench, setBench] = useState(row.bench);
  const [factor, setFactor] = useState<FactorPercent>(row.factor_percent);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const carryOut = async (...drafts: Draft[]) => {
    for (const draft of drafts) if (!(await onOrder(draft))) break; // what follows may rest on it
    onDone();
  };
  return (
    <dialog class="dialog" ref={dialog} onClose={onDone} aria-labelledby="player-heading">
      <form
        class="dialog_form"
        onSubmit={(event) => {
          event.preventDefault();
          void carryOut(...changes(row, handle, bench), ...factorDrafts(view, row, factor));
        }}
      >
        <h2 id="player-heading" class="dialog_heading">
          <bdi>{row.handle}</bdi>
        </h2>
        {row.from_round > 1 && <p>Joined at round {row.from_round}; marks count from there.</p>}
        <label class="field">
          <span class="field_label">Another handle</span>
          <input
            class="field_input"
            value={handle}
            maxLength={40}
            onInput={(event) => setHandle(event.currentTarget.value)}
          />
        </label>
        {benches && <BenchOf bench={bench} benches={benches} onBench={setBench} />}
        <FactorChoice view={view} factor={factor} least={100} onFactor={setFactor} />
        <DialogButtons
          onOut={() => void carryOut({ type: "remove_player", player: row.player })}
          onLeave={onDone}
        />
      </form>
    </dialog>
  );
}

function changes(row: RosterRow, handle: string, bench: string): Draft[] {
  const { player } = row;
  return [
    ...(handle === row.handle ? [] : [{ type: "rename_player" as const, player, handle }]),
    ...(bench === row.bench ? [] : [{ type: "seat_at_bench" as const, player, bench }]),
  ];
}

/** Another bench for a player: one of those there are, or a new one. */
function BenchOf(props: { bench: string; benches: readonly string[]; onBench: (bench: string) => void }) {
  return (
    <label class="field">
      <span class="field_label">Bench</span>
      <input
        class="field_input"
        list="benches"
        value={props.bench}
        maxLength={24}
        onInput={(event) => props.onBench(event.currentTarget.value)}
      />
      <datalist id="benches">
        {props.benches.map((bench) => (
          <option key={bench} value={bench} />
        ))}
      </datalist>
    </label>
  );
}

function DialogButtons({ onOut, onLeave }: { onOut: () => void; onLeave: () => void }) {
  return (
    <div class="dialog_buttons">
      <button class="button button-main" type="submit">
        Change
      </button>
      <button class="button" type="button" onClick={onOut}>
        Send out of the room
      </button>
      <button class="button" type="button" onClick={onLeave}>
        Leave it
      </button>
    </div>
  );
}

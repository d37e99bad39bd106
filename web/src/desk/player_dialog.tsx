import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { RosterRow } from "../wire";

/** One player: another handle, or out of the room. */
export function PlayerDialog(props: {
  row: RosterRow;
  onOrder: (draft: Draft) => Promise<boolean>;
  onDone: () => void;
}) {
  const { row, onOrder, onDone } = props;
  const [handle, setHandle] = useState(row.handle);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const carryOut = async (draft: Draft) => {
    await onOrder(draft);
    onDone();
  };
  return (
    <dialog class="dialog" ref={dialog} onClose={onDone} aria-labelledby="player-heading">
      <form
        class="dialog_form"
        onSubmit={(event) => {
          event.preventDefault();
          void carryOut({ type: "rename_player", player: row.player, handle });
        }}
      >
        <h2 id="player-heading" class="dialog_heading">
          {row.handle}
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
        <DialogButtons
          onOut={() => void carryOut({ type: "remove_player", player: row.player })}
          onLeave={onDone}
        />
      </form>
    </dialog>
  );
}

function DialogButtons({ onOut, onLeave }: { onOut: () => void; onLeave: () => void }) {
  return (
    <div class="dialog_buttons">
      <button class="button button-main" type="submit">
        Rename
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

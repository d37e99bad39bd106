import "./group.css";
import type { Line } from "../line/line";
import { Complaint } from "../parts/notice";
import type { GroupFace, PublicView } from "../wire";
import { useOrders } from "./group_orders";

interface PauseProps {
  view: PublicView;
  group: GroupFace;
  line: Line;
}

function mayPause(view: PublicView): boolean {
  return view.phase === "answering" || view.phase === "explained";
}

/** Anybody may ask for a pause while a round is open or its record is read. */
export function PauseButton({ view, group, line }: PauseProps) {
  const orders = useOrders(line);
  if (!mayPause(view) || group.paused) return null;
  return (
    <button
      class="button pause_button"
      type="button"
      disabled={orders.waiting}
      onClick={() => void orders.give({ type: "ask_pause", round: view.round })}
    >
      Pause
    </button>
  );
}

/** The pause, and the way out of it, which is open to everybody too. */
export function PauseNotice({ view, group, line }: PauseProps) {
  const orders = useOrders(line);
  if (!mayPause(view) || !group.paused) return null;
  return (
    <div class="pause">
      <p>
        <b>Pause.</b> No clock runs; answers are taken.
      </p>
      <button
        class="button button-main"
        type="button"
        disabled={orders.waiting}
        onClick={() => void orders.give({ type: "go_on", round: view.round })}
      >
        Go on
      </button>
      <Complaint text={orders.complaint} />
    </div>
  );
}

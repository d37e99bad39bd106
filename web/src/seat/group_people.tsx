import "./group.css";
import { useState } from "preact/hooks";
import type { Line } from "../line/line";
import { Complaint } from "../parts/notice";
import type { SeatMate } from "../wire";
import { useOrders } from "./group_orders";

const LONGEST_HANDLE = 40;

/** Another handle: where nobody leads, everybody chooses their own. */
export function OwnHandle({ handle, line }: { handle: string; line: Line }) {
  const [wish, setWish] = useState(handle);
  const orders = useOrders(line);
  const change = (event: Event) => {
    event.preventDefault();
    if (wish.trim() !== "" && wish !== handle) void orders.give({ type: "rename_self", handle: wish });
  };
  return (
    <details class="group_more">
      <summary>Change my handle</summary>
      <form class="group_rename" onSubmit={change}>
        <input
          class="field_input"
          aria-label="My handle"
          value={wish}
          maxLength={LONGEST_HANDLE}
          onInput={(event) => setWish(event.currentTarget.value)}
          spellcheck={false}
        />
        <button class="button" type="submit" disabled={orders.waiting}>
          Change
        </button>
      </form>
      <Complaint text={orders.complaint} />
    </details>
  );
}

/** For whoever opened the room: somebody who does not belong here may be sent out. */
export function SendOutList({ mates, line }: { mates: readonly SeatMate[]; line: Line }) {
  const orders = useOrders(line);
  if (mates.length === 0) return null;
  return (
    <details class="group_more">
      <summary>Send somebody out</summary>
      <ul class="group_mates">
        {mates.map((mate) => (
          <li key={mate.player}>
            <bdi>{mate.handle}</bdi>
            <button
              class="button"
              type="button"
              disabled={orders.waiting}
              aria-label={`Send ${mate.handle} out`}
              onClick={() => void orders.give({ type: "send_out", player: mate.player })}
            >
              Send out
            </button>
          </li>
        ))}
      </ul>
      <Complaint text={orders.complaint} />
    </details>
  );
}

/** For whoever opened the room: draw the benches now, or anew. */
export function DrawButton({ line }: { line: Line }) {
  const orders = useOrders(line);
  return (
    <p>
      <button
        class="button"
        type="button"
        disabled={orders.waiting}
        onClick={() => void orders.give({ type: "draw_benches" })}
      >
        Draw the benches
      </button>
    </p>
  );
}

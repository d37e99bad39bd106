import "./group.css";
import { useState } from "preact/hooks";
import type { Line } from "../line/line";
import { useLeft } from "../parts/left";
import { Complaint } from "../parts/notice";
import type { GroupFace, OwnView, PublicView } from "../wire";
import { countOf, secondsText } from "../words/numbers";
import { useOrders } from "./group_orders";

interface ReadyProps {
  view: PublicView;
  group: GroupFace;
  own: OwnView | null;
  line: Line;
}

/** Below everything: ready for what comes next, how many are waited for, and when it comes anyway. */
export function ReadyBar({ view, group, own, line }: ReadyProps) {
  const orders = useOrders(line);
  const ready = own?.group?.ready ?? false;
  const single = view.phase === "gathering" && group.present < 2;
  const [asked, setAsked] = useState(false);
  const say = () => {
    if (single && !asked) return setAsked(true);
    void orders.give({ type: "say_ready", round: view.round, alone: single });
  };
  return (
    <div class="ready_bar">
      <div class="ready_words">
        <p>{waitText(view, group, ready)}</p>
        <ReadingLeft group={group} line={line} />
        {single && asked && !ready && <p>Others may still come in later. Begin with nobody else here?</p>}
        <Complaint text={orders.complaint} />
      </div>
      <button
        class={single && !asked ? "button ready_button" : "button button-main ready_button"}
        type="button"
        aria-disabled={ready && !single}
        onClick={() => (ready && !single ? undefined : say())}
      >
        {orders.waiting ? "One moment" : buttonText(view, ready, single, asked)}
      </button>
    </div>
  );
}

function ReadingLeft({ group, line }: { group: GroupFace; line: Line }) {
  const until = group.reading_until;
  const left = useLeft(
    until === null ? null : { limit_ms: null, closes_at: until, left_ms: null, paused: false },
    line.clock,
  );
  if (left === null || group.paused) return null;
  return (
    <p class="ready_left">
      or by itself in <b>{secondsText(left)}</b>
      {left <= 59_000 && " s"}
    </p>
  );
}

function buttonText(view: PublicView, ready: boolean, single: boolean, asked: boolean): string {
  if (single) return asked ? "Begin alone" : "Begin without others";
  if (ready) return "Ready ✓";
  if (view.phase === "gathering") return "I am ready";
  return view.round < view.rounds ? `Ready for round ${view.round + 1}` : "Ready to finish";
}

function waitText(view: PublicView, group: GroupFace, ready: boolean): string {
  if (view.phase === "gathering" && group.present < 2) return "Nobody else is here yet.";
  if (group.paused) return `${countOf(group.present, "player")} here.`;
  const others = group.waited_for - (ready ? 0 : 1);
  if (!ready) return others > 0 ? `Waiting for you and ${others} more.` : "Everybody waits for you.";
  return others > 0 ? `Waiting for ${others} more.` : "All are ready.";
}

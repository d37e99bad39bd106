import "../parts/buttons.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { ServerClock } from "../line/server_clock";
import { ViewMenu } from "../parts/view_menu";
import type { DeskView } from "../wire";
import { EndDialog } from "./end_dialog";
import { actionLabel, type DeskAction, orderFor } from "./orders";
import { OwnTimeDialog } from "./own_times";
import { endsOwnTime, stillTime } from "./still_time";

/** The steps of the review: the next one always at the right and under one key, the others beside it. */
export function ActionBar(props: {
  view: DeskView;
  clock: ServerClock;
  onOrder: (draft: Draft) => Promise<boolean>;
}) {
  const { view, clock, onOrder } = props;
  const [asked, ask] = useState<DeskAction | null>(null);
  const [ending, setEnding] = useState(false);
  const [busy, setBusy] = useState(false);
  const next = view.actions[0];
  const still = stillTime(view, clock.now()).length;
  const take = async (action: DeskAction | undefined, sure = false) => {
    if (action === undefined || busy) return;
    if (action === "end_review") return setEnding(true);
    if (!sure && endsOwnTime(action) && stillTime(view, clock.now()).length > 0) return ask(action);
    ask(null);
    setBusy(true);
    await onOrder(orderFor(action, view, sure));
    setBusy(false);
  };
  return (
    <footer class="actions_bar">
      <a class="button actions_leave" href="/desk" onClick={leaveReview}>
        All reviews
      </a>
      <ViewMenu keys="N for the next step, D for light or dark" acts={{ n: () => void take(next) }} />
      <OtherSteps view={view} onTake={(action) => void take(action)} />
      <NextStep view={view} busy={busy} onTake={() => void take(next)} />
      {asked && (
        <OwnTimeDialog
          view={view}
          clock={clock}
          step={actionLabel(asked, view)}
          onGo={() => void take(asked, true)}
          onWait={() => ask(null)}
        />
      )}
      {ending && (
        <EndDialog
          ahead={view.items.filter((item) => item.state === "ahead").length}
          still={still}
          onEnd={() => void onOrder(orderFor("end_review", view, still > 0)).then(() => setEnding(false))}
          onStay={() => setEnding(false)}
        />
      )}
    </footer>
  );
}

/** What else may be done now. */
function OtherSteps({ view, onTake }: { view: DeskView; onTake: (action: DeskAction) => void }) {
  const next = view.actions[0];
  return (
    <div class="actions_others">
      {view.actions.slice(next && isStrike(next) ? 0 : 1).map((action) => (
        <button key={action} class="button" type="button" onClick={() => onTake(action)}>
          {actionLabel(action, view)}
        </button>
      ))}
    </div>
  );
}

/** The one big button: always in this place, and focused when the focus was on it or nowhere. */
function NextStep({ view, busy, onTake }: { view: DeskView; busy: boolean; onTake: () => void }) {
  const main = useFocusedNext(`${view.public.phase} ${view.public.round} ${view.public.stations?.turn}`);
  const next = view.actions[0];
  if (next === undefined || isStrike(next)) return <Finished room={view.room} />;
  return (
    <button
      class="button button-main actions_next"
      type="button"
      ref={main}
      aria-busy={busy}
      onClick={onTake}
      onKeyDown={(event) => event.repeat && event.preventDefault()} // a key held down is one press
    >
      {actionLabel(next, view)} <kbd class="actions_key">N</kbd>
    </button>
  );
}

function Finished({ room }: { room: string }) {
  return (
    <p class="actions_done">
      The review is finished.{" "}
      <a class="button button-main" href={`/desk/report/${encodeURIComponent(room)}`}>
        Open the report
      </a>
    </p>
  );
}

function isStrike(action: DeskAction): boolean {
  return action === "strike_item" || action === "restore_item";
}

/** Leaves the review for the list: without its name in the address. */
function leaveReview(event: Event): void {
  event.preventDefault();
  history.replaceState(null, "", "/desk");
  location.reload();
}

/** Focus follows the next step where it was on the last one, or nowhere. */
function useFocusedNext(step: string) {
  const main = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const focused = document.activeElement;
    if (focused === null || focused === document.body) main.current?.focus();
  }, [step]);
  return main;
}

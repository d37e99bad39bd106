import "../parts/buttons.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import { ViewMenu } from "../parts/view_menu";
import type { DeskView } from "../wire";
import { EndDialog } from "./end_dialog";
import { actionLabel, type DeskAction, orderFor } from "./orders";

/** The steps of the review: the next one always at the right and under one key, the others beside it. */
export function ActionBar(props: { view: DeskView; onOrder: (draft: Draft) => Promise<boolean> }) {
  const { view, onOrder } = props;
  const [ending, setEnding] = useState(false);
  const [busy, setBusy] = useState(false);
  const next = view.actions[0];
  const take = async (action: DeskAction | undefined) => {
    if (action === undefined || busy) return;
    if (action === "end_review") return setEnding(true);
    setBusy(true);
    await onOrder(orderFor(action, view));
    setBusy(false);
  };
  return (
    <footer class="actions_bar">
      <a class="button actions_leave" href="/desk" onClick={leaveReview}>
        All reviews
      </a>
      <ViewMenu keys="N for the next step, D for light or dark" acts={{ n: () => void take(next) }} />
      <div class="actions_others">
        {view.actions.slice(next && isStrike(next) ? 0 : 1).map((action) => (
          <button key={action} class="button" type="button" onClick={() => void take(action)}>
            {actionLabel(action, view)}
          </button>
        ))}
      </div>
      <NextStep view={view} busy={busy} onTake={() => void take(next)} />
      {ending && (
        <EndDialog
          ahead={view.items.filter((item) => item.state === "ahead").length}
          onEnd={() => void onOrder(orderFor("end_review", view)).then(() => setEnding(false))}
          onStay={() => setEnding(false)}
        />
      )}
    </footer>
  );
}

/** The one big button: always in this place, and focused when the focus was on it or nowhere. */
function NextStep({ view, busy, onTake }: { view: DeskView; busy: boolean; onTake: () => void }) {
  const main = useFocusedNext(`${view.public.phase} ${view.public.round}`);
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

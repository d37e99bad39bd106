import type { DeskView } from "../wire";

/** How many have said who they are, and the way to the page with names, which opens beside the desk. */
export function CreditPanel({ view, owns }: { view: DeskView; owns: boolean }) {
  if (!owns && !view.credit) return null;
  return (
    <p class="roster_credit">
      {view.credit && (
        <span>
          For credit: {view.credit.claimed} on the roster
          {view.credit.unclaimed > 0 && `, ${view.credit.unclaimed} not yet`}
        </span>
      )}
      {owns && (
        <a href={`/desk/gradebook/${encodeURIComponent(view.room)}`} target="_blank" rel="noopener">
          {view.credit ? "Gradebook and record" : view.public.round > 0 ? "Record as a file" : "For credit?"}
          <span class="unseen"> (opens beside)</span>
        </a>
      )}
      {owns && view.credit && <span>That page has names: do not mirror it.</span>}
    </p>
  );
}

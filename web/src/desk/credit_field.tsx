import { useEffect, useState } from "preact/hooks";

/** A class roster of this host, by name; who is on it stays on the rosters' own pages. */
export interface RosterName {
  id: string;
  name: string;
  people: number;
}

/** Whether the review is for credit, and by which class roster. */
export function CreditField(props: { roster: string; onRoster: (roster: string) => void }) {
  const rosters = useRosters();
  return (
    <fieldset class="choice plan_credit">
      <legend class="field_label">For credit</legend>
      <div class="credit_choice">
        <label>
          <span class="unseen">By which class roster</span>
          <select
            class="field_input"
            value={props.roster}
            onChange={(event) => props.onRoster(event.currentTarget.value)}
          >
            <option value="">no: handles alone, marks are practice</option>
            {rosters.map((one) => (
              <option key={one.id} value={one.id}>
                by {one.name} ({one.people})
              </option>
            ))}
          </select>
        </label>
        <p class="choice_note">
          {props.roster !== "" &&
            "Players give their institutional id besides the handle; names stay on the gradebook\u2019s own page. "}
          <a href="/desk/rosters">Class rosters</a>
        </p>
      </div>
    </fieldset>
  );
}

function useRosters(): readonly RosterName[] {
  const [rosters, setRosters] = useState<readonly RosterName[]>([]);
  useEffect(() => {
    void readRosters().then(setRosters);
  }, []);
  return rosters;
}

/** Without the list the desk works on: reviews are laid out without credit then. */
async function readRosters(): Promise<readonly RosterName[]> {
  try {
    const answer = await fetch("/desk/rosters.json", { headers: { accept: "application/json" } });
    return answer.ok ? ((await answer.json()) as RosterName[]) : [];
  } catch {
    return [];
  }
}

import { useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { BenchRow } from "../wire";
import { countOf } from "../words/numbers";

type Order = (draft: Draft) => Promise<boolean>;

/** The benches by name, each to be renamed; folded away until it is asked for. */
export function BenchNames({ rows, onOrder }: { rows: readonly BenchRow[]; onOrder: Order }) {
  if (rows.length === 0) return null;
  return (
    <details class="roster_benches">
      <summary>{countOf(rows.length, "bench", "benches")}</summary>
      <ul>
        {rows.map((row) => (
          <BenchName key={row.bench} row={row} onOrder={onOrder} />
        ))}
      </ul>
      <p class="choice_note">To move a player, or found a bench, press the player below.</p>
    </details>
  );
}

function BenchName({ row, onOrder }: { row: BenchRow; onOrder: Order }) {
  const [name, setName] = useState<string | null>(null);
  if (name === null) {
    return (
      <li class="roster_bench_line">
        <span>
          {row.bench} <span class="choice_note">{countOf(row.players, "player")}</span>
        </span>
        <button class="button" type="button" onClick={() => setName(row.bench)}>
          Rename<span class="unseen"> {row.bench}</span>
        </button>
      </li>
    );
  }
  return (
    <li>
      <form
        class="roster_bench_line"
        onSubmit={async (event) => {
          event.preventDefault();
          if (await onOrder({ type: "rename_bench", bench: row.bench, name })) setName(null);
        }}
      >
        <input
          class="field_input"
          aria-label={`Another name for ${row.bench}`}
          value={name}
          maxLength={24}
          required
          ref={(field) => field?.focus()}
          onInput={(event) => setName(event.currentTarget.value)}
        />
        <button class="button" type="submit">
          Rename
        </button>
        <button class="button" type="button" onClick={() => setName(null)}>
          Leave it
        </button>
      </form>
    </li>
  );
}

import type { BlueprintGrid } from "../wire";
import type { Draft } from "./blueprint";
import { MOST_ROUNDS } from "./plan";

interface OptionProps {
  grid: BlueprintGrid;
  draft: Draft;
  onDraft: (draft: Draft) => void;
  onShare: () => void;
}

/** What the numbers mean, and how the rounds of the grid follow each other. */
export function BlueprintOptions({ grid, draft, onDraft, onShare }: OptionProps) {
  return (
    <div class="blueprint_options">
      <SharingOut grid={grid} draft={draft} onDraft={onDraft} onShare={onShare} />
      <label class="blueprint_option">
        <span>Warm-up first, on landmarks and movement words</span>
        <select
          class="field_input"
          value={draft.warm_up}
          onChange={(event) => onDraft({ ...draft, warm_up: Number(event.currentTarget.value) })}
        >
          {Array.from({ length: grid.warm_ups + 1 }, (_, count) => (
            <option key={`${count}`} value={count}>
              {count === 0 ? "none" : `${count}`}
            </option>
          ))}
        </select>
      </label>
      <label class="blueprint_option">
        <span>Predicted difficulty to aim at</span>
        <select
          class="field_input"
          value={draft.aim}
          onChange={(event) => onDraft({ ...draft, aim: event.currentTarget.value as Draft["aim"] })}
        >
          {(["easy", "mixed", "hard"] as const).map((aim) => (
            <option key={aim}>{aim}</option>
          ))}
        </select>
      </label>
      <label class="choice_line">
        <input
          type="checkbox"
          checked={draft.interleave}
          onChange={(event) => onDraft({ ...draft, interleave: event.currentTarget.checked })}
        />
        <span>mix look-alike muscles; else one compartment follows another</span>
      </label>
    </div>
  );
}

function SharingOut({ draft, onDraft, onShare }: OptionProps) {
  return (
    <>
      <div class="blueprint_share">
        <label class="blueprint_option">
          <span>Rounds to share out</span>
          <input
            class="field_input grid_number"
            type="number"
            inputMode="numeric"
            min={1}
            max={MOST_ROUNDS}
            value={draft.share}
            onInput={(event) => onDraft({ ...draft, share: event.currentTarget.valueAsNumber })}
          />
        </label>
        <button class="button" type="button" onClick={onShare}>
          Share out evenly
        </button>
      </div>
      <label class="choice_line">
        <input
          type="checkbox"
          checked={draft.weights}
          onChange={(event) => onDraft({ ...draft, weights: event.currentTarget.checked })}
        />
        <span>the numbers are weights for sharing out these rounds</span>
      </label>
    </>
  );
}

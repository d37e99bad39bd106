import type { DeskItem, DeskView } from "../wire";
import { percent } from "../words/numbers";
import { difficultyShort } from "./difficulty_words";
import { familyWord } from "./family_words";

/** All items of the review in order: done, open, ahead. */
export function ItemList(props: {
  view: DeskView;
  shown: DeskItem | undefined;
  onShow: (id: string) => void;
}) {
  return (
    <nav class="items" aria-label="Items of this review">
      <ol class="items_list">
        {props.view.items.map((item) => (
          <li key={item.id}>
            <button
              class={`items_item items_item-${item.state}`}
              type="button"
              aria-current={item.id === props.shown?.id ? "true" : undefined}
              onClick={() => props.onShow(item.id)}
            >
              <span class="items_number">{item.round}</span>
              <span class="items_stem">{item.stem}</span>
              <span class="items_note">
                {item.warm_up && "warm-up · "}
                {typeof item.twin_of === "number" && `twin of ${item.twin_of} · `}
                {familyWord(item.family)} · {stateText(item)}
              </span>
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function stateText(item: DeskItem): string {
  if (item.struck) return "⊘ struck";
  if (item.state === "ahead") return difficultyShort(item) || "ahead";
  if (item.state === "open") return "▸ open";
  return item.mean_mark === null ? "✓ closed" : `✓ mean ${percent(item.mean_mark)}`;
}

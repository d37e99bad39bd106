import { useContext, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { DeskItem, DeskView } from "../wire";
import { countOf, percent } from "../words/numbers";
import { difficultyShort } from "./difficulty_words";
import { familyWord } from "./family_words";
import { OwnDialog } from "./own_dialog";
import { Owning } from "./owning";
import { SaveFile } from "./save_file";

/** All items of the review in order: done, open, ahead. */
export function ItemList(props: {
  view: DeskView;
  shown: DeskItem | undefined;
  onShow: (id: string) => void;
  onOrder: (draft: Draft) => Promise<boolean>;
}) {
  const owns = useContext(Owning);
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
                {item.by_host ? "your own" : familyWord(item.family)} · {stateText(item)}
                {item.dealt_key && " · ⟳ keyed anew"}
                {item.flags.up > 0 && <Flags item={item} />}
              </span>
            </button>
          </li>
        ))}
      </ol>
      {owns && props.view.public.phase !== "finished" && <AddOwn {...props} />}
      {owns && <SaveFile view={props.view} />}
    </nav>
  );
}

/** An item of the host's own, after the one under the host's eye if that is ahead. */
function AddOwn(props: {
  view: DeskView;
  shown: DeskItem | undefined;
  onOrder: (draft: Draft) => Promise<boolean>;
}) {
  const [open, setOpen] = useState(false);
  const ahead = props.view.items.filter((item) => item.position !== null);
  const position = props.shown?.position;
  return (
    <>
      <button class="button items_add" type="button" onClick={() => setOpen(true)}>
        Add an own item
      </button>
      {open && (
        <OwnDialog
          place={{ kind: "add", position: typeof position === "number" ? position + 1 : ahead.length }}
          ahead={ahead}
          onOrder={props.onOrder}
          onDone={() => setOpen(false)}
        />
      )}
    </>
  );
}

function Flags({ item }: { item: DeskItem }) {
  const { up, waiting } = item.flags;
  const words = `⚑ ${countOf(waiting || up, "flag")}`;
  return waiting > 0 ? <b> · {words}</b> : <> · {words}, settled</>;
}

function stateText(item: DeskItem): string {
  if (item.struck) return "⊘ struck";
  if (item.state === "ahead") return difficultyShort(item) || "ahead";
  if (item.state === "open") return "▸ open";
  return item.mean_mark === null ? "✓ closed" : `✓ mean ${percent(item.mean_mark)}`;
}

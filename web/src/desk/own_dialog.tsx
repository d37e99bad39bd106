import "./own_dialog.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import { ask } from "../own/api";
import { holds, noteOf } from "../own/library";
import { FindField } from "../parts/find_field";
import { Complaint } from "../parts/notice";
import type { DeskItem, OwnItemLine, OwnLibrary } from "../wire";

/** Where a chosen item goes: into a place of its own, or into that of another. */
export type Place = { kind: "add"; position: number } | { kind: "instead"; item: DeskItem };

/** The host's own items to choose one from, for a place among those ahead. */
export function OwnDialog(props: {
  place: Place;
  /** The items ahead, in order. */
  ahead: readonly DeskItem[];
  onOrder: (draft: Draft) => Promise<boolean>;
  onDone: () => void;
}) {
  const { place, onDone } = props;
  const [items, setItems] = useState<readonly OwnItemLine[] | null>(null);
  const [problem, setProblem] = useState("");
  const [words, setWords] = useState("");
  const [position, setPosition] = useState(place.kind === "add" ? place.position : 0);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
    void ask<OwnLibrary>("GET", "/desk/own/items").then((got) => {
      setProblem(got.problem);
      setItems(got.value?.items ?? []);
    });
  }, []);
  const choose = async (own_item: string) => {
    await props.onOrder(orderOf(place, position, own_item)); // why it was refused stands on the desk
    onDone();
  };
  return (
    <dialog class="dialog own_dialog" ref={dialog} onClose={onDone} aria-labelledby="own-heading">
      <div class="dialog_form">
        <h2 id="own-heading" class="dialog_heading">
          {place.kind === "add" ? "Add an item of your own" : "An item of your own instead"}
        </h2>
        {place.kind === "add" && (
          <PositionField position={position} ahead={props.ahead} onPosition={setPosition} />
        )}
        <FindField label="Find" words={words} onWords={setWords} />
        <Complaint text={problem} />
        {items && <Choices items={items.filter((one) => holds(one, words))} onChoose={choose} />}
        <div class="dialog_buttons">
          <a class="button" href="/desk/items" target="_blank" rel="noopener">
            Write items
          </a>
          <button class="button" type="button" onClick={onDone}>
            Leave it
          </button>
        </div>
      </div>
    </dialog>
  );
}

function orderOf(place: Place, position: number, own_item: string): Draft {
  if (place.kind === "add") return { type: "add_own_item", position, own_item };
  const { id, position: at } = place.item;
  return { type: "swap_for_own", position: at ?? 0, item: id, own_item };
}

function PositionField(props: {
  position: number;
  ahead: readonly DeskItem[];
  onPosition: (position: number) => void;
}) {
  return (
    <label class="field">
      <span class="field_label">Place among the items ahead</span>
      <select
        class="field_input"
        value={props.position}
        onChange={(event) => props.onPosition(Number(event.currentTarget.value))}
      >
        {props.ahead.map((item, place) => (
          <option key={item.id} value={place}>
            before {item.round}: {item.stem}
          </option>
        ))}
        <option value={props.ahead.length}>at the end</option>
      </select>
    </label>
  );
}

function Choices(props: { items: readonly OwnItemLine[]; onChoose: (id: string) => void }) {
  if (props.items.length === 0)
    return <p class="own_none">No item of yours fits. Write one, then come back.</p>;
  return (
    <ul class="own_choices">
      {props.items.map((item) => (
        <li key={item.id}>
          <button
            class="own_choice_open"
            type="button"
            disabled={item.to_mend > 0}
            onClick={() => props.onChoose(item.id)}
          >
            <span class="own_choice_stem">{item.stem || "Untitled item"}</span>
            <span class="own_choice_note">
              {item.to_mend > 0 ? "has something to mend before it may be asked" : noteOf(item)}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}

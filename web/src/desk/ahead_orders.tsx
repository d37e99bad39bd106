import { useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { DeskItem } from "../wire";
import { OwnDialog } from "./own_dialog";

/** What may be done with an item that is still ahead: another one dealt, an own one instead, or none. */
export function AheadOrders(props: {
  item: DeskItem;
  position: number;
  onOrder: (draft: Draft) => Promise<boolean>;
}) {
  const { item, position, onOrder } = props;
  const [choosing, setChoosing] = useState(false);
  return (
    <div class="sheet_orders">
      <button
        class="button"
        type="button"
        onClick={() => void onOrder({ type: "swap_item", position, item: item.id })}
      >
        Swap
      </button>
      <button class="button" type="button" onClick={() => setChoosing(true)}>
        Own item instead
      </button>
      <button
        class="button"
        type="button"
        onClick={() => void onOrder({ type: "drop_item", position, item: item.id })}
      >
        Drop
      </button>
      {choosing && (
        <OwnDialog
          place={{ kind: "instead", item }}
          ahead={[]}
          onOrder={onOrder}
          onDone={() => setChoosing(false)}
        />
      )}
    </div>
  );
}

import { useContext, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { DeskItem } from "../wire";
import { OwnDialog } from "./own_dialog";
import { Owning } from "./owning";

interface AheadProps {
  item: DeskItem;
  position: number;
  /** How many items are ahead. */
  ahead: number;
  onOrder: (draft: Draft) => Promise<boolean>;
}

/** What may be done with an item that is still ahead: another one dealt, an own one instead, or none. */
export function AheadOrders(props: AheadProps) {
  const { item, position, onOrder } = props;
  const owns = useContext(Owning);
  const [choosing, setChoosing] = useState(false);
  return (
    <div class="sheet_orders">
      <Places {...props} />
      <button
        class="button"
        type="button"
        onClick={() => void onOrder({ type: "swap_item", position, item: item.id })}
      >
        Swap
      </button>
      {owns && (
        <button class="button" type="button" onClick={() => setChoosing(true)}>
          Own item instead
        </button>
      )}
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

/** One place up or down among the items ahead. */
function Places({ item, position, ahead, onOrder }: AheadProps) {
  const move = (to: number) => void onOrder({ type: "move_item", position, item: item.id, to });
  return (
    <>
      <button class="button" type="button" disabled={position === 0} onClick={() => move(position - 1)}>
        Earlier
      </button>
      <button
        class="button"
        type="button"
        disabled={position + 1 >= ahead}
        onClick={() => move(position + 1)}
      >
        Later
      </button>
    </>
  );
}

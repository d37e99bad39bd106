import type { Draft } from "../line/line";
import { ItemPicture } from "../parts/picture";
import { RecordsWait } from "../parts/records_wait";
import type { DeskItem, DeskView } from "../wire";
import { keyWords, listed } from "../words/numbers";
import { TYPED_MARK } from "../words/verdicts";
import { AheadOrders } from "./ahead_orders";
import { ItemChanges } from "./changes_list";
import { DeskPlaceRows } from "./desk_place_rows";
import { DeskRows } from "./desk_rows";
import { DeskTypedRows } from "./desk_typed_rows";
import { difficultyWords } from "./difficulty_words";
import { familyWord, formatWord } from "./family_words";
import { FlagsPart } from "./flags_part";
import { KeyPart } from "./key_part";

interface SheetProps {
  item: DeskItem;
  view: DeskView;
  onOrder: (draft: Draft) => Promise<boolean>;
}

/** Everything about one item, for the host alone: key, reasons, where wrong options come from, live counts. */
export function ItemSheet(props: SheetProps) {
  const { view } = props;
  const item = asAtStation(props.item, view);
  const talk = view.talks.find((one) => one.round === item.round && item.position === null);
  const second = talk?.second;
  return (
    <article class="sheet">
      <header class="sheet_top">
        <Kind item={item} />
        <ItemOrders {...props} />
      </header>
      <h2 class="stem sheet_stem">{item.stem}</h2>
      {item.picture && <ItemPicture picture={item.picture} />}
      {item.struck && <p class="sheet_struck">⊘ Struck: out of all marks.</p>}
      {item.dealt_key && <p class="sheet_struck">⟳ Keyed anew. As dealt the key was {item.dealt_key}.</p>}
      {item.rows.length > 0 && <DeskPlaceRows item={item} again={second?.rows} />}
      {item.rows.length === 0 && item.options.length > 0 && <DeskRows item={item} again={second?.options} />}
      {item.options.length === 0 && (
        <p class="sheet_key">
          Key: <b>{keyWords(item.key_text, item.pick)}</b>
        </p>
      )}
      {item.typed.length > 0 && (
        <DeskTypedRows
          item={item}
          answered={talk ? talk.first.of : answeredIn(item, view)}
          onOrder={props.onOrder}
        />
      )}
      {second && second.typed.length > 0 && (
        <p class="sheet_again">
          <b>Again, after talking:</b>{" "}
          {second.typed.map((row) => `${row.text} ${TYPED_MARK[row.verdict]} ${row.count}`).join(", ")}
        </p>
      )}
      <Why item={item} view={view} />
      <Foot {...props} item={item} />
    </article>
  );
}

/** What is said about the item and what was changed of it, and the way to another key. */
function Foot({ item, view, onOrder }: SheetProps) {
  return (
    <div class="sheet_foot">
      <FlagsPart item={item} onOrder={onOrder} />
      <ItemChanges view={view} round={item.round} />
      {item.position === null && item.round <= view.public.round && <KeyPart item={item} onOrder={onOrder} />}
    </div>
  );
}

/** Why the key is the key and, of the current round, which records come later. */
function Why({ item, view }: { item: DeskItem; view: DeskView }) {
  const isCurrent = item.position === null && item.round === view.public.round;
  return (
    <>
      <p class="sheet_why">
        <b>Why:</b> {item.why}
      </p>
      {isCurrent && <RecordsWait names={view.public.waiting} />}
    </>
  );
}

/** What sort of item it is, in a line. */
function Kind({ item }: { item: DeskItem }) {
  return (
    <p class="sheet_kind">
      Item {item.round} · {item.warm_up && "warm-up · "}
      {typeof item.twin_of === "number" && `twin of item ${item.twin_of} · `}
      {familyWord(item.family)} · {formatWord(item)} ·{" "}
      {item.seconds === null ? "no time limit" : `${item.seconds} s`}
      {item.by_host && item.family !== "own" && " · written by you"}
      {[listed(item.muscles), item.region].filter(Boolean).map((words) => ` · ${words}`)}
      {difficultyWords(item).map((words) => ` · ${words}`)}
    </p>
  );
}

/** Items at stations show no counts: these come with the result of each. */
function asAtStation(item: DeskItem, view: DeskView): DeskItem {
  return item.position === null && item.round > view.public.round ? { ...item, state: "ahead" } : item;
}

/** How many answered: known for the current round alone. */
function answeredIn(item: DeskItem, view: DeskView): number | null {
  return item.round === view.public.round ? view.public.answered : null;
}

function ItemOrders({
  item,
  view,
  onOrder,
}: {
  item: DeskItem;
  view: DeskView;
  onOrder: (draft: Draft) => Promise<boolean>;
}) {
  const position = item.position;
  if (position !== null)
    return (
      <AheadOrders
        item={item}
        position={position}
        ahead={view.items.filter((one) => one.position !== null).length}
        onOrder={onOrder}
      />
    );
  // the current item's step is among those below; items at stations have no result yet
  if (item.round >= view.public.round) return null;
  const type = item.struck ? "restore_item" : "strike_item";
  return (
    <div class="sheet_orders">
      <button class="button" type="button" onClick={() => void onOrder({ type, round: item.round })}>
        {item.struck ? "Let it count again" : "Strike this item"}
      </button>
    </div>
  );
}

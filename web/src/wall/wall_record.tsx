import { useState } from "preact/hooks";
import { PlainPicture } from "../parts/picture";
import { RecordsWait } from "../parts/records_wait";
import { briefRecord, differencesOf } from "../record/brief";
import { RecordPlate } from "../record/record_plate";
import type { Record as MuscleRecord, PublicView, ResultFace } from "../wire";
import { keyWords, listed } from "../words/numbers";
import { BY_HOST } from "../words/verdicts";

/** The record on the wall: key and reason first, then the plate with what books agree on. */
export function WallRecord({ view, result }: { view: PublicView; result: ResultFace }) {
  const [shown, show] = useState(0);
  const record = view.records[shown] ?? view.records[0];
  return (
    <div class="wall_plate">
      <div class="wall_answer">
        <div>
          <h1 class="wall_asked">{view.item?.stem}</h1>
          <p class="wall_why">
            <b>{keyWords(result.key_text, view.item?.pick ?? 1)}</b>
            {result.struck && " (struck: does not count)"}
          </p>
        </div>
        {result.by_host && <p class="by_host">{BY_HOST}</p>}
        {result.why && result.rows.length === 0 && <p class="wall_why">{result.why}</p>}
        {view.records.length > 1 && <Leaves view={view} shown={shown} onShow={show} />}
      </div>
      {!record && view.item?.picture && <PlainPicture picture={view.item.picture} />}
      {record && <RecordPlate record={briefRecord(record)} />}
      {record && <BesidePlate record={record} view={view} />}
      <RecordsWait names={view.waiting} />
    </div>
  );
}

/** What has no room on the plate: how to tell look-alikes apart when that was asked, and that books differ. */
function BesidePlate({ record, view }: { record: MuscleRecord; view: PublicView }) {
  const tell = view.item?.family === "look_alike" ? nearestTell(record, view) : "";
  const differ = differencesOf(record);
  return (
    <p class="wall_differ">
      {tell && (
        <span>
          <b>Keep apart:</b> {tell}{" "}
        </span>
      )}
      {differ.length > 0 && `Books differ on ${listed(differ)}. `}The full record is at each seat.
    </p>
  );
}

/** The line of the record that has most to do with the options: a wall has room for one. */
function nearestTell(record: MuscleRecord, view: PublicView): string {
  const asked = (view.item?.options ?? []).map((option) => option.text.toLowerCase()).join(" ");
  const hits = (terms: readonly string[]) =>
    terms.filter((term) => asked.includes(term.toLowerCase())).length;
  const lines = [...record.lookalikes].sort((a, b) => hits(b.terms) - hits(a.terms));
  return lines[0]?.tell ?? "";
}

function Leaves(props: { view: PublicView; shown: number; onShow: (index: number) => void }) {
  return (
    <nav class="leaves" aria-label="Records of this round">
      {props.view.records.map((record, index) => (
        <button
          key={record.muscle}
          class={index === props.shown ? "button leaf leaf-shown" : "button leaf"}
          type="button"
          aria-pressed={index === props.shown}
          onClick={() => props.onShow(index)}
        >
          {record.name}
        </button>
      ))}
    </nav>
  );
}

import "./record.css";
import type { Record as MuscleRecord, NameLine } from "../wire";
import { breakable } from "../words/word_parts";
import { layerText } from "./brief";
import { Foot } from "./foot";
import { PathOfMuscle } from "./path";
import { PathTable } from "./path_table";
import { Supply } from "./supply";

/** The full record of a muscle, laid out as a plate to be looked at. */
export function RecordPlate({ record }: { record: MuscleRecord }) {
  return (
    <article class="record" aria-labelledby={`record-${record.muscle}`}>
      <Title record={record} />
      <div class="record_plate">
        <PathOfMuscle record={record} />
        <Supply record={record} />
      </div>
      <PathTable record={record} />
      <Foot record={record} />
    </article>
  );
}

function Title({ record }: { record: MuscleRecord }) {
  const place = [record.region, record.compartment, layerText(record.layer)];
  return (
    <header class="record_title">
      <p class="record_place">{place.filter((text) => text !== "").join(" · ")}</p>
      <h2 class="record_name" id={`record-${record.muscle}`}>
        {breakable(record.name)}
      </h2>
      <p class="record_latin" lang="la">
        {record.latin}
      </p>
      <p class="record_meaning">{record.meaning}</p>
      <OtherNames names={record.names} />
    </header>
  );
}

function OtherNames({ names }: { names: readonly NameLine[] }) {
  const shown = names.filter((name) => name.kind !== "latin");
  if (shown.length === 0) return null;
  return (
    <p class="record_names">
      also called{" "}
      {shown.map((name, index) => (
        <span key={name.term}>
          {index > 0 && ", "}
          {name.term}
          {name.kind !== "synonym" && <span class="record_kind"> ({NAME_KIND[name.kind] ?? name.kind})</span>}
        </span>
      ))}
    </p>
  );
}

const NAME_KIND: { [kind: string]: string } = {
  short: "short",
  old: "older name",
  abbreviation: "abbreviation",
  eponym: "eponym",
};

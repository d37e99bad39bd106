import type { Record as MuscleRecord, SourceLine } from "../wire";
import { listed } from "../words/numbers";

/** What to keep apart, where books differ, notes with the caution, sources. */
export function Foot({ record }: { record: MuscleRecord }) {
  const clinical = record.notes.some((note) => note.kind === "clinical");
  return (
    <div class="foot">
      {record.lookalikes.length > 0 && (
        <section>
          <h3 class="plate_heading">Keep apart</h3>
          {record.lookalikes.map((line) => (
            <p key={line.terms.join()}>
              <b class="foot_terms">{listed(line.terms)}</b> {line.tell}
            </p>
          ))}
        </section>
      )}
      {record.differ.length > 0 && (
        <section>
          <h3 class="plate_heading">Books differ</h3>
          {record.differ.map((line) => (
            <p key={line.about + line.text}>
              <b class="foot_terms">{line.about}</b> {line.text}{" "}
              <SourceMarks ids={line.sources} all={record.sources} />
            </p>
          ))}
        </section>
      )}
      {record.notes.length > 0 && (
        <section>
          <h3 class="plate_heading">Notes</h3>
          {record.notes.map((note) => (
            <p key={note.text}>
              {note.kind === "clinical" && <span class="status_word">clinical</span>} {note.text}{" "}
              <SourceMarks ids={note.sources} all={record.sources} />
            </p>
          ))}
          {clinical && record.cautions.map((caution) => <Caution key={caution} text={caution} />)}
        </section>
      )}
      <Sources sources={record.sources} />
    </div>
  );
}

function Caution({ text }: { text: string }) {
  return (
    <p class="caution">
      <span class="caution_mark" aria-hidden="true">
        !
      </span>
      {text}
    </p>
  );
}

function SourceMarks({ ids, all }: { ids: readonly string[]; all: readonly SourceLine[] }) {
  const numbers = ids
    .map((id) => all.findIndex((source) => source.id === id) + 1)
    .filter((number) => number > 0);
  if (numbers.length === 0) return null;
  return <span class="source_marks">[{numbers.join(", ")}]</span>;
}

const ACCESS_WORD: Record<SourceLine["access"], string> = {
  compared: "compared",
  read: "read",
  "from memory": "from memory",
  "common practice": "no single source",
};

function Sources({ sources }: { sources: readonly SourceLine[] }) {
  if (sources.length === 0) return null;
  return (
    <section class="sources">
      <h3 class="sources_heading">Sources</h3>
      <ol class="sources_list">
        {sources.map((source) => (
          <li key={source.id}>
            {source.title} <span class="sources_access">({ACCESS_WORD[source.access]})</span>
          </li>
        ))}
      </ol>
    </section>
  );
}

import { useState } from "preact/hooks";
import { familyWord } from "../desk/family_words";
import { FindField } from "../parts/find_field";
import type { OwnItemLine, OwnLibrary } from "../wire";
import { countOf, listed } from "../words/numbers";

const FORMAT_WORD: Record<OwnItemLine["format"], string> = {
  one_best: "one best answer",
  pick_n: "pick all that are right",
  typed: "typed",
};

/** All own items: found by a word, opened, copied, taken out. */
export function Library(props: {
  library: OwnLibrary;
  onCopy: (id: string) => void;
  onDrop: (id: string) => void;
}) {
  const [words, setWords] = useState("");
  const found = props.library.items.filter((item) => holds(item, words));
  return (
    <section class="own_library" aria-label="Library">
      <div class="own_find">
        <FindField
          label="Find"
          hint="a word of the question, a muscle, a region, a family"
          words={words}
          onWords={setWords}
        />
        <a class="button button-main" href="#new">
          Write an item
        </a>
      </div>
      <p role="status" class="field_hint">
        {props.library.items.length === 0
          ? "No item has been written yet."
          : `${found.length} of ${countOf(props.library.items.length, "item")}`}
      </p>
      <ul class="own_lines">
        {found.map((item) => (
          <Line key={item.id} item={item} {...props} />
        ))}
      </ul>
    </section>
  );
}

function Line(props: { item: OwnItemLine; onCopy: (id: string) => void; onDrop: (id: string) => void }) {
  const { item } = props;
  const [asking, setAsking] = useState(false);
  const name = item.stem || "Untitled item";
  return (
    <li class="own_line">
      <a class="own_line_open" href={`#${item.id}`}>
        <span class="own_line_stem">{name}</span>
        <span class="field_hint">{noteOf(item)}</span>
      </a>
      <p class={item.to_mend === 0 ? "own_ready" : "own_ready own_ready-not"}>
        {item.to_mend === 0 ? "✓ may be asked" : `✎ ${countOf(item.to_mend, "thing")} to mend`}
      </p>
      <div class="own_line_steps">
        {asking ? (
          <>
            <button class="button" type="button" onClick={() => props.onDrop(item.id)}>
              Delete it for good<span class="unseen">: {name}</span>
            </button>
            <button class="button" type="button" onClick={() => setAsking(false)}>
              Keep it
            </button>
          </>
        ) : (
          <>
            <button class="button" type="button" onClick={() => props.onCopy(item.id)}>
              Duplicate<span class="unseen">: {name}</span>
            </button>
            <button class="button" type="button" onClick={() => setAsking(true)}>
              Delete<span class="unseen">: {name}</span>
            </button>
          </>
        )}
      </div>
    </li>
  );
}

export function noteOf(item: OwnItemLine): string {
  const about = item.muscles.length > 0 ? listed(item.muscles) : "";
  const family = item.family === "own" ? "" : familyWord(item.family);
  const picture = item.has_picture ? "with a picture" : "";
  return [FORMAT_WORD[item.format], family, about, item.region, picture].filter(Boolean).join(" · ");
}

export function holds(item: OwnItemLine, words: string): boolean {
  const text = `${item.stem} ${noteOf(item)}`.toLowerCase();
  return words
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}

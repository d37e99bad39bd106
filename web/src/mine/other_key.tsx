import { useState } from "preact/hooks";
import { keepKey, keyBefore, keyInLink, type OwnKey } from "../line/own_key";
import { Complaint } from "../parts/notice";
import { countOf } from "../words/numbers";

interface OtherKeyProps {
  current: OwnKey;
  say: (text: string) => void;
  /** Shows the page of the key that is now kept. */
  onKey?: () => void;
}

/** Another device's key, by its link or its words; and the way back to the key that was here before. */
export function OtherKey({ current, say, onKey = () => location.reload() }: OtherKeyProps) {
  const [typed, setTyped] = useState("");
  const [complaint, setComplaint] = useState("");
  const before = keyBefore();
  const take = (key: OwnKey) => {
    keepKey(key);
    onKey();
  };
  const enter = async (event: Event) => {
    event.preventDefault();
    const read = await readKey(typed);
    const problem =
      "key" in read ? (read.key === current ? "This is the key that is here already." : "") : read.problem;
    setComplaint(problem);
    if (problem) say(problem);
    else if ("key" in read) take(read.key);
  };
  return (
    <form class="key_other no-print" onSubmit={(event) => void enter(event)} noValidate>
      <KeyField typed={typed} onTyped={setTyped} />
      <Complaint text={complaint} />
      <p class="key_ways">
        <button class="button" type="submit">
          Use this key
        </button>
        {before !== null && (
          <button class="button" type="button" onClick={() => take(before)}>
            Back to the key that was here before
          </button>
        )}
      </p>
    </form>
  );
}

function KeyField({ typed, onTyped }: { typed: string; onTyped: (typed: string) => void }) {
  return (
    <div class="field">
      <label class="field_label" for="other_key">
        Use a key from another device
      </label>
      <span class="field_hint" id="other_key_hint">
        Its private link, or its eight words. The key that is here now can be taken back.
      </span>
      <textarea
        id="other_key"
        class="field_input"
        rows={2}
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        aria-describedby="other_key_hint"
        value={typed}
        onInput={(event) => onTyped(event.currentTarget.value)}
      />
    </div>
  );
}

/** The key in a link or a phrase, or what is wrong with it and what to do. */
export async function readKey(typed: string): Promise<{ key: OwnKey } | { problem: string }> {
  const linked = keyInLink(typed);
  if (linked !== null) return { key: linked };
  if (typed.trim() === "") return { problem: "Paste a private link, or type the eight words." };
  if (typed.includes("/mine"))
    return { problem: "This link lacks its key: it ends with # and 16 letters and figures." };
  const { PHRASE_WORDS, readPhrase } = await import("../line/own_phrase");
  const read = readPhrase(typed);
  switch (read.kind) {
    case "key":
      return { key: read.key };
    case "too few":
      return { problem: `A phrase has ${PHRASE_WORDS} words; here are ${countOf(read.words, "word")}.` };
    case "unknown":
      return { problem: `"${read.word}" is not a word of any phrase. Look at it once more.` };
    case "mistaken":
      return { problem: "One of the words is wrong, or they are in another order. Look at them once more." };
  }
}

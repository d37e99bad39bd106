import "../seat/answering.css";
import "../seat/closed.css";
import { useState } from "preact/hooks";
import { SolutionRows } from "../mine/solution_rows";
import { ItemPicture } from "../parts/picture";
import { AnswerRows, askText } from "../seat/answer_rows";
import { type Draft, shownDraft } from "../seat/draft";
import type { OwnPreview } from "../wire";
import { keyWords, listed } from "../words/numbers";

const NOTHING: Draft = { choice: [], typed: [] };

/** The item as the seat sees it: while it is asked, and after the round. */
export function Preview({ preview }: { preview: OwnPreview | null }) {
  const [after, setAfter] = useState(false);
  if (preview === null) return <p class="field_hint">The item is shown here once nothing is left to mend.</p>;
  return (
    <>
      <fieldset class="own_turn" aria-label="What is shown">
        {[false, true].map((one) => (
          <button
            key={`${one}`}
            class={one === after ? "button leaf leaf-shown" : "button leaf"}
            type="button"
            aria-pressed={one === after}
            onClick={() => setAfter(one)}
          >
            {one ? "After the round" : "While it is asked"}
          </button>
        ))}
      </fieldset>
      {after ? <Solved preview={preview} /> : <Asked key={preview.face.stem} preview={preview} />}
    </>
  );
}

function Asked({ preview }: { preview: OwnPreview }) {
  const { face } = preview;
  const [kept, setDraft] = useState(NOTHING);
  const draft = shownDraft(face, kept);
  return (
    <div class="answering own_seat">
      <h3 class="stem" id="stem">
        {face.stem}
      </h3>
      {face.picture && <ItemPicture picture={face.picture} />}
      <p class="answering_ask" id="choose">
        {askText(face, draft)} <span class="own_limit">{preview.seconds} s</span>
      </p>
      <AnswerRows item={face} draft={draft} onDraft={setDraft} say={() => undefined} />
    </div>
  );
}

function Solved({ preview }: { preview: OwnPreview }) {
  const { face, solution } = preview;
  return (
    <div class="closed own_seat">
      <h3 class="stem">{face.stem}</h3>
      {face.picture && <ItemPicture picture={face.picture} />}
      <p class="by_host">Written by your host.</p>
      <p class="closed_key">
        The key: <b class="closed_term">{keyWords(solution.key_text, face.pick)}</b>
      </p>
      <p>
        <b>Why:</b> {solution.why}
      </p>
      <SolutionRows solution={solution} chosen={[]} />
      {solution.records.length > 0 && (
        <p class="field_hint">
          Then the full record of {listed(solution.records.map((record) => record.name))}.
        </p>
      )}
    </div>
  );
}

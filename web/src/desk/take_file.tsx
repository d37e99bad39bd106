import "./take_file.css";
import { useEffect, useRef, useState } from "preact/hooks";
import { sendFile } from "../own/api";
import { Complaint } from "../parts/notice";
import type { FileFault, ReviewFilePreview, ReviewTaken } from "../wire";
import { dayOf } from "../words/dates";
import { countOf } from "../words/numbers";

/** A review from a file: looked at first, and taken only if the host says so. */
export function TakeFile({ onTaken }: { onTaken: (room: string) => void }) {
  const [file, setFile] = useState<File | null>(null);
  const [preview, setPreview] = useState<ReviewFilePreview | null>(null);
  const [wrong, setWrong] = useState<{ problem: string; faults: readonly FileFault[] } | null>(null);
  const [busy, setBusy] = useState(false);
  const look = async (input: HTMLInputElement) => {
    const chosen = input.files?.[0];
    input.value = "";
    if (!chosen) return;
    setBusy(true);
    const got = await sendFile<ReviewFilePreview>("/desk/review-file/check", chosen, "application/json");
    setBusy(false);
    setFile(chosen);
    setPreview(got.value);
    setWrong(got.value ? null : { problem: got.problem, faults: got.faults });
  };
  const take = async (intoLibrary: boolean) => {
    if (!file) return;
    setBusy(true);
    const order = crypto.getRandomValues(new Uint32Array(4)).join("-");
    const way = `/desk/review-file?order=${order}${intoLibrary ? "&library=1" : ""}`;
    const got = await sendFile<ReviewTaken>(way, file, "application/json");
    setBusy(false);
    setPreview(null);
    if (got.value) onTaken(got.value.room);
    else setWrong({ problem: got.problem, faults: got.faults });
  };
  return (
    <section class="take_file">
      <h2 class="start_heading">From a file</h2>
      <label class="field">
        <span class="choice_note">A review that was saved as a file; it is shown before it is taken.</span>
        <input
          type="file"
          accept="application/json,.json"
          disabled={busy}
          onChange={(event) => void look(event.currentTarget)}
        />
      </label>
      <p role="status">{busy ? "Reading the file …" : ""}</p>
      {wrong && <Wrong {...wrong} />}
      {preview && <Look preview={preview} busy={busy} onTake={take} onLeave={() => setPreview(null)} />}
    </section>
  );
}

function Wrong({ problem, faults }: { problem: string; faults: readonly FileFault[] }) {
  return (
    <>
      <Complaint text={problem} />
      <ul class="take_faults">
        {faults.map((fault) => (
          <li key={`${fault.path} ${fault.text}`}>
            <code>{fault.path}</code>: {fault.text}
          </li>
        ))}
      </ul>
    </>
  );
}

function Look(props: {
  preview: ReviewFilePreview;
  busy: boolean;
  onTake: (intoLibrary: boolean) => Promise<void>;
  onLeave: () => void;
}) {
  const { preview } = props;
  const [intoLibrary, setIntoLibrary] = useState(false);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog class="dialog take_look" ref={dialog} onClose={props.onLeave} aria-labelledby="take-heading">
      <div class="dialog_form">
        <h2 id="take-heading" class="dialog_heading">
          {preview.title || "Untitled"}
        </h2>
        <p>{summaryOf(preview)}</p>
        {preview.remarks.map((remark) => (
          <p key={remark}>{remark}</p>
        ))}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: where it scrolls, the keyboard must be able to scroll it */}
        <ol class="take_items" tabIndex={0} aria-label="Items">
          {preview.items.map((item, place) => (
            <li key={place}>
              <span class="take_stem">{item.stem}</span>
              {item.by_host && <span class="choice_note"> · written by a host</span>}
              {item.has_picture && <span class="choice_note"> · with a picture</span>}
            </li>
          ))}
        </ol>
        <IntoLibrary count={preview.own_items ?? 0} on={intoLibrary} onChoose={setIntoLibrary} />
        <div class="dialog_buttons">
          <button
            class="button button-main"
            type="button"
            disabled={props.busy}
            onClick={() => void props.onTake(intoLibrary)}
          >
            Take it over
          </button>
          <button class="button" type="button" onClick={props.onLeave}>
            Leave it
          </button>
        </div>
      </div>
    </dialog>
  );
}

/** Offers what hosts wrote for the library of whoever takes the file. */
function IntoLibrary(props: { count: number; on: boolean; onChoose: (on: boolean) => void }) {
  if (props.count === 0) return null;
  return (
    <label class="choice_line">
      <input
        type="checkbox"
        checked={props.on}
        onChange={(event) => props.onChoose(event.currentTarget.checked)}
      />
      <span>put {countOf(props.count, "item")} that a host wrote into your own items too, with pictures</span>
    </label>
  );
}

function summaryOf(preview: ReviewFilePreview): string {
  const parts = [preview.course, countOf(preview.items.length, "item")];
  if (!preview.played) return parts.join(" · ");
  const ended = preview.ended_at === null ? "" : dayOf(preview.ended_at);
  return [
    ...parts,
    countOf(preview.players, "player"),
    countOf(preview.answers, "answer"),
    ended && `ended ${ended}`,
  ]
    .filter(Boolean)
    .join(" · ");
}

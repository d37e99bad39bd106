import { useState } from "preact/hooks";
import type { PictureKept } from "../wire";
import { sendFile } from "./api";
import { FindingsAt, toldBy } from "./findings";
import type { FieldProps } from "./option_fields";

const CAUTION =
  "Show only what you may show: your own drawing, or a picture whose licence allows it. No photographs from " +
  "the dissecting room, and nothing of a donor without the donor's consent. Place and time of a photograph " +
  "are taken out of the file here.";

/** A picture beside the stem: uploaded, described in words, and said whose it is. */
export function PictureField({ own, onOwn, judged }: FieldProps) {
  const [problem, setProblem] = useState("");
  const [busy, setBusy] = useState(false);
  const upload = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    setBusy(true);
    const got = await sendFile<PictureKept>("/desk/own/pictures", file, file.type || "image/png");
    setBusy(false);
    setProblem(got.problem);
    input.value = "";
    if (got.value) {
      const { name, width, height } = got.value;
      onOwn({ ...own, picture: { alt: "", credit: "", ...own.picture, name, width, height } });
    }
  };
  return (
    <fieldset class="own_picture">
      <legend class="field_label">Picture</legend>
      <p class="field_hint">{CAUTION}</p>
      <div class="own_picture_file">
        <label class="field">
          <span>{own.picture ? "Another file" : "File"}: PNG, JPEG or WebP, up to 10 MB</span>
          <input
            type="file"
            accept="image/png,image/jpeg,image/webp"
            disabled={busy}
            onChange={(event) => void upload(event.currentTarget)}
          />
        </label>
        {own.picture && (
          <button class="button" type="button" onClick={() => onOwn({ ...own, picture: null })}>
            Take the picture out
          </button>
        )}
      </div>
      <p role="status" class="finding finding-error">
        {busy ? "The picture is being read …" : problem}
      </p>
      {own.picture && <PictureWords {...{ own, onOwn, judged }} />}
    </fieldset>
  );
}

function PictureWords({ own, onOwn, judged }: FieldProps) {
  const picture = own.picture;
  if (!picture) return null;
  return (
    <>
      <img
        class="own_thumbnail"
        src={`/picture/${picture.name}`}
        alt={picture.alt || "the picture that you have chosen"}
        width={picture.width}
        height={picture.height}
      />
      <label class="field">
        <span class="field_label">What is to be seen, in words</span>
        <span class="field_hint">
          Whoever does not see the picture answers by this. Say what lies where; do not name the key.
        </span>
        <textarea
          class="field_input"
          rows={3}
          value={picture.alt}
          {...toldBy("picture.alt", judged)}
          onInput={(event) => onOwn({ ...own, picture: { ...picture, alt: event.currentTarget.value } })}
        />
      </label>
      <FindingsAt field="picture.alt" judged={judged} />
      <label class="field">
        <span class="field_label">Whose picture it is, and by which licence it is shown</span>
        <input
          class="field_input"
          value={picture.credit}
          {...toldBy("picture.credit", judged)}
          onInput={(event) => onOwn({ ...own, picture: { ...picture, credit: event.currentTarget.value } })}
        />
      </label>
      <FindingsAt field="picture.credit" judged={judged} />
    </>
  );
}

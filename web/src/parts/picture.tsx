import "./picture.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { PictureFace } from "../wire";

/** The picture of an item with its twin in words, for whoever does not see it; larger at a touch. */
export function ItemPicture({ picture }: { picture: PictureFace }) {
  const [failed, setFailed] = useState(false);
  const [large, setLarge] = useState(false);
  if (failed) return <PictureInWords picture={picture} />;
  return (
    <figure class="picture">
      <button class="picture_button" type="button" onClick={() => setLarge(true)}>
        <Shown picture={picture} onFail={() => setFailed(true)} />
        <span class="unseen">Show it larger</span>
      </button>
      <figcaption class="picture_below">
        <details class="picture_words">
          <summary>In words</summary>
          <p>{picture.alt}</p>
        </details>
        <span class="picture_credit">{picture.credit}</span>
      </figcaption>
      {large && <Large picture={picture} onDone={() => setLarge(false)} />}
    </figure>
  );
}

/** The picture where nobody can touch it, or where it is to be looked at alone. */
export function PlainPicture({ picture }: { picture: PictureFace }) {
  const [failed, setFailed] = useState(false);
  if (failed) return <PictureInWords picture={picture} />;
  return (
    <figure class="picture">
      <Shown picture={picture} onFail={() => setFailed(true)} />
      <figcaption class="picture_credit">{picture.credit}</figcaption>
    </figure>
  );
}

function Shown({ picture, onFail }: { picture: PictureFace; onFail: () => void }) {
  return (
    <img
      class="picture_shown"
      src={picture.address}
      alt={picture.alt}
      width={picture.width}
      height={picture.height}
      onError={onFail}
    />
  );
}

function PictureInWords({ picture }: { picture: PictureFace }) {
  return (
    <p class="picture_instead">
      <b>The picture shows:</b> {picture.alt}
    </p>
  );
}

function Large({ picture, onDone }: { picture: PictureFace; onDone: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog class="picture_large" ref={dialog} onClose={onDone} aria-label="The picture, larger">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: where it scrolls, the keyboard must be able to scroll it */}
      <div class="picture_large_scroll" tabIndex={0}>
        <img src={picture.address} alt={picture.alt} width={picture.width} height={picture.height} />
      </div>
      <button class="button button-main" type="button" onClick={() => dialog.current?.close()}>
        Close the picture
      </button>
    </dialog>
  );
}

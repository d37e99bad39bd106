import "./changes.css";
import { useState } from "preact/hooks";
import type { Draft } from "../line/line";
import type { DeskItem } from "../wire";
import { faultOf, isInPlaces, type KeyWish, keyDraft, wishOf, withLetter, withPlace } from "./key_wish";

interface WishProps {
  item: DeskItem;
  wish: KeyWish;
  onWish: (wish: KeyWish) => void;
}

/** Keys an opened item anew, folded away until it is asked for. */
export function KeyPart({ item, onOrder }: { item: DeskItem; onOrder: (draft: Draft) => void }) {
  return (
    <details class="sheet_more">
      <summary>Key it anew</summary>
      <KeyForm key={`${item.id} ${item.key_text.join()}`} item={item} onOrder={onOrder} />
    </details>
  );
}

function KeyForm({ item, onOrder }: { item: DeskItem; onOrder: (draft: Draft) => void }) {
  const [wish, setWish] = useState(wishOf(item));
  const fault = faultOf(item, wish);
  const keyIt = (event: Event) => {
    event.preventDefault();
    if (fault === "") onOrder(keyDraft(item, wish));
  };
  return (
    <form class="rekey" onSubmit={keyIt}>
      <WishFields item={item} wish={wish} onWish={setWish} />
      <label class="field">
        <span class="field_label">Reason, for the class</span>
        <input
          class="field_input"
          value={wish.reason}
          maxLength={200}
          placeholder="may stay empty"
          onInput={(event) => setWish({ ...wish, reason: event.currentTarget.value })}
        />
      </label>
      {fault && <p role="alert">{fault}</p>}
      <div class="rekey_buttons">
        <button class="button" type="submit" aria-disabled={fault !== ""}>
          Key it so
        </button>
        {item.dealt_key && (
          <button
            class="button"
            type="button"
            onClick={() => onOrder({ type: "restore_key", round: item.round })}
          >
            Back to the dealt key
          </button>
        )}
      </div>
    </form>
  );
}

function WishFields(props: WishProps) {
  if (props.item.options.length === 0) return <TermsField {...props} />;
  return isInPlaces(props.item) ? <PlaceFields {...props} /> : <LetterFields {...props} />;
}

function LetterFields({ item, wish, onWish }: WishProps) {
  return (
    <fieldset>
      <legend class="field_label">Right is any of these:</legend>
      {item.options.map(({ letter, text }) => (
        <label key={letter} class="choice_line">
          <input
            type="checkbox"
            checked={wish.key.includes(letter)}
            onChange={() => onWish(withLetter(wish, letter))}
          />
          <span class="rekey_text">
            {letter}: {text}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

function PlaceFields({ item, wish, onWish }: WishProps) {
  return (
    <fieldset>
      <legend class="field_label">{item.format === "ordering" ? "In this order:" : "Row by row:"}</legend>
      {wish.key.map((letter, place) => (
        <label key={place} class="rekey_place">
          <span class="rekey_text">{item.rows[place]?.stem || `${place + 1}.`}</span>
          <select
            class="field_input"
            value={letter}
            onChange={(event) => onWish(withPlace(item, wish, place, event.currentTarget.value))}
          >
            {item.options.map((option) => (
              <option key={option.letter} value={option.letter}>
                {option.letter}: {option.text}
              </option>
            ))}
          </select>
        </label>
      ))}
    </fieldset>
  );
}

function TermsField({ wish, onWish }: WishProps) {
  return (
    <label class="field">
      <span class="field_label">Right are these, one a line</span>
      <textarea
        class="field_input"
        rows={4}
        value={wish.terms}
        onInput={(event) => onWish({ ...wish, terms: event.currentTarget.value })}
      />
    </label>
  );
}

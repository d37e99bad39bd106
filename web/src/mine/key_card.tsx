import { useEffect, useState } from "preact/hooks";
import { type OwnKey, privateLink } from "../line/own_key";
import { sharedOrigin } from "../line/page";

interface Shown {
  words: string[];
  /** The QR code of the private link: its side in modules, and an SVG path of the dark ones. */
  side: number;
  path: string;
}

/** The key in its three forms, to be copied, scanned by another device, or printed. */
export function KeyCard({ playerKey, say }: { playerKey: OwnKey; say: (text: string) => void }) {
  const link = privateLink(
    playerKey,
    sharedOrigin(document.getElementById("page")?.dataset.joinAddress ?? ""),
  );
  const [shown, setShown] = useState<Shown | null>(null);
  useEffect(() => {
    let gone = false;
    void drawn(playerKey, link).then((made) => !gone && setShown(made));
    return () => {
      gone = true;
    };
  }, [playerKey, link]);
  return (
    <div class="key_card">
      <p class="key_soft no-print">Look around first: whoever reads this has your key.</p>
      <div class="field">
        <label class="field_label" for="private_link">
          Private link
        </label>
        <input
          id="private_link"
          class="field_input"
          readOnly
          value={link}
          onFocus={(event) => event.currentTarget.select()}
        />
      </div>
      {shown && <CodeAndWords shown={shown} />}
      <p class="key_ways no-print">
        <button class="button" type="button" onClick={() => void copy(link, say)}>
          Copy the link
        </button>
        <button class="button" type="button" onClick={printCard}>
          Print this card
        </button>
      </p>
    </div>
  );
}

function CodeAndWords({ shown }: { shown: Shown }) {
  return (
    <div class="key_forms">
      <figure class="key_code">
        <svg viewBox={`0 0 ${shown.side} ${shown.side}`} role="img" aria-label="QR code of your private link">
          <rect width={shown.side} height={shown.side} fill="#fff" />
          <path d={shown.path} fill="#000" />
        </svg>
        <figcaption>Scan it with your other device.</figcaption>
      </figure>
      <div>
        <p class="field_label">Recovery phrase</p>
        <p class="key_soft">Eight words, to write down. Four letters of each are enough.</p>
        <ol class="key_words">
          {shown.words.map((word, place) => (
            <li key={`${place} ${word}`}>{word}</li>
          ))}
        </ol>
      </div>
    </div>
  );
}

/** Words and code come in a file of their own, which is loaded only when somebody wants to see the key. */
async function drawn(key: OwnKey, link: string): Promise<Shown> {
  const [{ phraseOf }, { generate }] = await Promise.all([import("../line/own_phrase"), import("lean-qr")]);
  const code = generate(link);
  const quiet = 4;
  let path = "";
  for (let y = 0; y < code.size; y += 1) {
    for (let x = 0; x < code.size; x += 1) {
      if (code.get(x, y)) path += `M${x + quiet} ${y + quiet}h1v1h-1z`;
    }
  }
  return { words: phraseOf(key), side: code.size + 2 * quiet, path };
}

async function copy(link: string, say: (text: string) => void): Promise<void> {
  try {
    await navigator.clipboard.writeText(link);
    say("Link copied.");
  } catch {
    // plain http has no clipboard: with the link selected, the device's own way to copy works
    document.querySelector<HTMLInputElement>("#private_link")?.select();
    say("The link is selected; copy it from there.");
  }
}

function printCard(): void {
  document.documentElement.dataset.print = "key_card";
  window.addEventListener("afterprint", () => delete document.documentElement.dataset.print, { once: true });
  window.print();
}

import "./own_time.css";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Draft } from "../line/line";
import { randomHex } from "../line/random";
import { timeLink } from "../seat/time_link";
import type { DeskView } from "../wire";
import type { FactorPercent } from "../words/factor";
import { FactorChoice, holdingDrafts } from "./factor_choice";

const SECRET_BYTES = 16;

interface LinkProps {
  view: DeskView;
  joinAddress: string;
  onOrder: (draft: Draft) => Promise<boolean>;
}

/** The way to a private link, and what the host should know while somebody's time does not count. */
export function MoreTime(props: LinkProps) {
  const { view } = props;
  const [open, setOpen] = useState(false);
  if (!view.can_keep_own_time || view.public.door_code === "" || view.public.phase === "finished")
    return null;
  const idle = !view.holds_results && view.roster.some((row) => row.factor_percent > 100);
  return (
    <>
      {idle && (
        <p class="roster_warning">
          Somebody has more time, but it counts only while results are held.{" "}
          <button
            class="button"
            type="button"
            onClick={() => void props.onOrder({ type: "hold_results", on: true })}
          >
            Hold results
          </button>
        </p>
      )}
      {view.holds_results && view.players_take_time && (
        <p class="choice_note">Players may take more time themselves; "+ time" says who does.</p>
      )}
      <button class="roster_more_time" type="button" onClick={() => setOpen(true)}>
        Private link for more time
      </button>
      {open && <LinkDialog {...props} onDone={() => setOpen(false)} />}
    </>
  );
}

/** Makes a link that gives whoever opens it first more time in this review. */
function LinkDialog({ view, joinAddress, onOrder, onDone }: LinkProps & { onDone: () => void }) {
  const [factor, setFactor] = useState<FactorPercent>(150);
  const [link, setLink] = useState("");
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const make = async (event: Event) => {
    event.preventDefault();
    const secret = randomHex(SECRET_BYTES);
    for (const draft of holdingDrafts(view, factor)) if (!(await onOrder(draft))) return onDone();
    const made = {
      type: "make_time_link" as const,
      secret,
      factor_percent: factor === 200 ? 200 : 150,
    } as const;
    if (!(await onOrder(made))) return onDone();
    setLink(timeLink(joinAddress.replace(/\/+$/, ""), view.public.door_code, secret));
  };
  return (
    <dialog class="dialog" ref={dialog} onClose={onDone} aria-labelledby="link-heading">
      <form class="dialog_form" onSubmit={(event) => void make(event)}>
        <h2 id="link-heading" class="dialog_heading">
          Private link for more time
        </h2>
        <p>
          For one player in this review: whoever opens it first has more time. Send it to that player alone.
        </p>
        {link === "" ? (
          <FactorChoice view={view} factor={factor} least={150} onFactor={setFactor} />
        ) : (
          <MadeLink link={link} />
        )}
        <div class="dialog_buttons">
          {link === "" && (
            <button class="button button-main" type="submit">
              Make the link
            </button>
          )}
          <button class="button" type="button" onClick={onDone}>
            {link === "" ? "Leave it" : "Done"}
          </button>
        </div>
      </form>
    </dialog>
  );
}

/** The link, to be copied; it is shown this once, since the server keeps only its hash. */
function MadeLink({ link }: { link: string }) {
  const field = useRef<HTMLInputElement>(null);
  const [copied, setCopied] = useState(false);
  useEffect(() => field.current?.select(), []);
  const copy = async () => {
    field.current?.select();
    try {
      await navigator.clipboard.writeText(link);
      setCopied(true);
    } catch {
      setCopied(document.execCommand("copy")); // plain http has no clipboard
    }
  };
  return (
    <div class="field made_link">
      <label class="field_label" for="made-link">
        The link; it is shown only now
      </label>
      <input class="field_input" id="made-link" ref={field} value={link} readOnly />
      <button class="button" type="button" onClick={() => void copy()}>
        {copied ? "Copied" : "Copy"}
      </button>
    </div>
  );
}

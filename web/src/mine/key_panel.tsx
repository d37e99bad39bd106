import "../parts/buttons.css";
import "./key_panel.css";
import { useEffect, useState } from "preact/hooks";
import { keptKey, type OwnKey } from "../line/own_key";
import type { Me } from "../wire";
import { dayOf } from "../words/dates";
import { countOf } from "../words/numbers";
import { DeleteAll } from "./delete_all";
import { KeyCard } from "./key_card";
import { OtherKey } from "./other_key";
import { type OwnData, ownDataOf } from "./own_data";
import { TakeOut } from "./take_out";

interface KeyPanelProps {
  playerKey: OwnKey;
  say: (text: string) => void;
  /** Clears what the page itself has kept; called after the server has deleted everything. */
  onForgotten?: () => Promise<void>;
  data?: OwnData;
}

/** A player's own key: shown, taken to another device, exchanged; and what is kept under it: taken out, deleted. */
export function KeyPanel({ playerKey, say, onForgotten, data = ownDataOf(playerKey) }: KeyPanelProps) {
  const [me, setMe] = useState<Me | null>(null);
  const [shown, setShown] = useState(false);
  useEffect(() => {
    void data.me().then((got) => got.kind === "done" && setMe(got.value));
  }, [playerKey]);
  return (
    <section class="key_panel" aria-labelledby="key_heading">
      <h2 class="key_heading" id="key_heading">
        Your key
      </h2>
      <p>
        This page opens with a key that this browser made and keeps. There is no account: whoever has the key
        sees and deletes what is here, and without it nobody can bring it back.
      </p>
      {me && <p class="key_soft">{keptText(me)}</p>}
      <p class="key_ways">
        <button class="button" type="button" aria-expanded={shown} onClick={() => setShown(!shown)}>
          {shown ? "Hide the key" : "Show link, QR code and words"}
        </button>
      </p>
      {shown && <KeyCard playerKey={playerKey} say={say} />}
      <OtherKey current={keptKey() ?? playerKey} say={say} />
      <TakeOut data={data} say={say} />
      <DeleteAll data={data} say={say} onForgotten={onForgotten} />
    </section>
  );
}

/** What the server keeps under this key, and how long. */
export function keptText(me: Me): string {
  if (!me.known) return "Nothing is kept under this key yet.";
  const since = me.since === null ? "" : ` since ${dayOf(me.since)}`;
  const rule =
    me.keep_players_days === 0
      ? "It stays until you delete it"
      : `It is erased when you have not been here for ${countOf(me.keep_players_days, "day")}`;
  const reviews =
    me.keep_reviews_days === 0 ? "" : `; each review ${countOf(me.keep_reviews_days, "day")} after its end`;
  return `Kept${since}: ${countOf(me.reviews, "review")}, and your second looks. ${rule}${reviews}.`;
}

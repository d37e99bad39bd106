import "./gathering.css";
import "./group.css";
import { useState } from "preact/hooks";
import { TakeBench } from "../bench/take_bench";
import type { Line } from "../line/line";
import { sharedOrigin } from "../line/page";
import type { GroupFace, OwnView, PublicView } from "../wire";
import { countOf } from "../words/numbers";
import { DrawButton, OwnHandle, SendOutList } from "./group_people";
import { KeptPanel } from "./kept_panel";
import { ReadyBar } from "./ready_bar";

interface GatheringProps {
  view: PublicView;
  group: GroupFace;
  own: OwnView | null;
  line: Line;
  say: (text: string) => void;
}

/** In the seat of a room without a host, before the first round. */
export function GroupGathering({ view, group, own, line, say }: GatheringProps) {
  return (
    <>
      <div class="gathering group_gathering">
        <h1 class="stem" id="stem" tabIndex={-1}>
          You are in
        </h1>
        <p>
          {view.title}
          {view.title !== view.course && <span class="gathering_soft"> · {view.course}</span>}
          <br />
          <span class="gathering_soft">
            {countOf(view.rounds, "round")}. The first opens when all who are here are ready.
          </span>
        </p>
        <ShareDoor doorCode={view.door_code} say={say} />
        <section aria-labelledby="here">
          <h2 class="group_heading" id="here">
            {countOf(group.present, "player")} here
          </h2>
          <ul class="group_handles">
            {group.handles.map((handle) => (
              <li key={handle}>
                <bdi>{handle}</bdi>
                {handle === own?.handle && " (you)"}
              </li>
            ))}
          </ul>
        </section>
        {view.benches && own?.bench && <TakeBench benches={view.benches} own={own.bench} line={line} />}
        {view.benches?.how === "drawn" && own?.group?.opener && <DrawButton line={line} />}
        {own && <OwnHandle key={own.handle} handle={own.handle} line={line} />}
        {own && <KeptPanel own={own} line={line} say={say} />}
        {own?.group?.opener && <SendOutList mates={own.group.mates} line={line} />}
      </div>
      <ReadyBar view={view} group={group} own={own} line={line} />
    </>
  );
}

/** Link, door code and QR code, to bring the others in. */
function ShareDoor({ doorCode, say }: { doorCode: string; say: (text: string) => void }) {
  const [copied, setCopied] = useState(false);
  const link = `${sharedOrigin(document.getElementById("page")?.dataset.joinAddress ?? "")}/seat/${doorCode}`;
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(link);
      setCopied(true);
      say("Link copied.");
    } catch {
      say("The link could not be copied; select it instead."); // plain http has no clipboard
    }
  };
  return (
    <section class="share" aria-label="Bring the others in">
      <div class="share_words">
        <p>
          Door code <b class="share_code">{doorCode}</b>
        </p>
        <p class="share_link">{link}</p>
        <p class="share_ways">
          <button class="button" type="button" onClick={() => void copy()}>
            {copied ? "Link copied ✓" : "Copy the link"}
          </button>
          <a class="button" href={`/wall/${doorCode}`} target="_blank" rel="noopener">
            Open the wall
          </a>
        </p>
      </div>
      <img class="share_qr" src={`/qr/${doorCode}.svg`} alt={`QR code with the link ${link}`} />
    </section>
  );
}

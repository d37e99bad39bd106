import type { ComponentChildren } from "preact";
import { PlainPicture } from "../parts/picture";
import { PlaceRows } from "../parts/place_rows";
import { RecordsWait } from "../parts/records_wait";
import { PlainRows, ResultRows } from "../parts/rows";
import { TurnsLine, TypedTwice } from "../parts/turns";
import type { ItemFace, PublicView, ResultFace } from "../wire";
import { countOf, keyWords } from "../words/numbers";
import { BY_HOST, HELD } from "../words/verdicts";
import { breakable } from "../words/word_parts";
import { WallRecord } from "./wall_record";
import { WallStandings } from "./wall_standings";
import { WallStations } from "./wall_stations";

/** What the wall shows in each phase. */
export function PhaseOfWall({
  view,
  players,
  joinAddress,
}: {
  view: PublicView;
  players: number;
  joinAddress: string;
}) {
  switch (view.phase) {
    case "preparing":
      return <Waiting />;
    case "gathering":
      return <Gathering view={view} players={players} joinAddress={joinAddress} />;
    case "stations":
      return view.stations ? <WallStations stations={view.stations} /> : <Waiting />;
    case "answering":
      return <Asked view={view} />;
    case "closed":
      return view.result ? <Outcome view={view} result={view.result} /> : <Held view={view} />;
    case "talking":
      return <Talking view={view} />;
    case "answering again":
      return <AskedAgain view={view} />;
    case "explained":
      if (view.result === null) return <Waiting />;
      if (view.records.length === 0) return <Outcome view={view} result={view.result} />;
      return <WallRecord view={view} result={view.result} />;
    case "finished":
      return <Finished view={view} />;
  }
}

function Waiting() {
  return (
    <div class="wall_still">
      <h1 class="stem">One moment</h1>
      <p>The host is preparing the review.</p>
    </div>
  );
}

function Gathering({
  view,
  players,
  joinAddress,
}: {
  view: PublicView;
  players: number;
  joinAddress: string;
}) {
  return (
    <div class="gather">
      <div class="gather_words">
        <h1 class="gather_title">{view.title}</h1>
        <p class="gather_course">{view.course}</p>
        <p class="gather_step">Open</p>
        <p class="gather_address">{joinAddress}</p>
        <p class="gather_step">and enter the door code</p>
        <p class="gather_code">{view.door_code}</p>
        {view.for_credit && <p class="gather_step">For credit: give your id at your seat</p>}
      </div>
      <figure class="gather_qr">
        <img
          src={`/qr/${view.door_code}.svg`}
          alt={`QR code that opens the seat page with door code ${view.door_code}`}
        />
        <figcaption>{players === 0 ? "nobody is here yet" : `${countOf(players, "player")} here`}</figcaption>
      </figure>
    </div>
  );
}

function Asked({ view }: { view: PublicView }) {
  const item = view.item;
  if (item === null) return <Waiting />;
  return (
    <>
      <h1 class="stem wall_stem">{item.stem}</h1>
      {item.stems.length > 0 && <Rows item={item} />}
      <BesidePicture item={item}>
        {item.stems.length === 0 && item.options.length > 0 && <PlainRows options={item.options} />}
        {item.options.length === 0 && <p class="wall_ask">Type the answer at your seat.</p>}
      </BesidePicture>
      {item.format === "ordering" && <p class="wall_ask">Put them in order at your seat.</p>}
    </>
  );
}

/** While neighbours talk: what is to be done, over what they talk about. */
function Talking({ view }: { view: PublicView }) {
  return (
    <>
      <p class="wall_talk">Talk with your neighbour</p>
      <Asked view={view} />
    </>
  );
}

function AskedAgain({ view }: { view: PublicView }) {
  return (
    <>
      <p class="wall_talk">Answer again</p>
      <Asked view={view} />
    </>
  );
}

/** A closed round whose result the host has not shown yet: what was asked, and nothing else. */
function Held({ view }: { view: PublicView }) {
  return (
    <>
      <Asked view={view} />
      <p class="wall_held">Round closed. {HELD}</p>
    </>
  );
}

/** What is answered, beside the picture if there is one: the rows keep their width, the picture its height. */
function BesidePicture({ item, children }: { item: ItemFace; children: ComponentChildren }) {
  if (!item.picture) return <>{children}</>;
  return (
    <div class="wall_pictured">
      <PlainPicture picture={item.picture} />
      <div>{children}</div>
    </div>
  );
}

/** The rows of a matching beside their options. */
function Rows({ item }: { item: ItemFace }) {
  return (
    <div class="wall_match">
      <ol class="wall_stems">
        {item.stems.map((stem) => (
          <li key={stem}>{breakable(stem)}</li>
        ))}
      </ol>
      <PlainRows options={item.options} />
    </div>
  );
}

function Outcome({ view, result }: { view: PublicView; result: ResultFace }) {
  const second = view.second ?? null;
  return (
    <>
      <h1 class="stem wall_stem">{view.item?.stem}</h1>
      {result.struck && <p class="wall_struck">⊘ Struck: this item does not count.</p>}
      {result.by_host && <p class="by_host">{BY_HOST}</p>}
      {result.rekeyed && <p class="wall_rekeyed">⟳ {result.rekeyed}</p>}
      <div class={view.standings ? "outcome outcome-standings" : "outcome"}>
        {view.item?.picture && !view.standings && <PlainPicture picture={view.item.picture} />}
        <div class="outcome_rows">
          {second && <TurnsLine result={result} second={second} />}
          {result.options.length > 0 && (
            <ResultRows options={result.options} chosen={[]} again={second?.options} />
          )}
          {result.rows.length > 0 && <PlaceRows rows={result.rows} chosen={[]} again={second?.rows} />}
          {result.options.length + result.rows.length === 0 && (
            <p class="wall_key">Key: {keyWords(result.key_text, view.item?.pick ?? 1)}</p>
          )}
          <TypedTwice first={result.typed.slice(0, second ? 3 : 5)} second={second?.typed.slice(0, 3)} />
        </div>
        {view.standings && <WallStandings rows={view.standings} />}
      </div>
      {result.why && result.rows.length === 0 && <p class="wall_why">{result.why}</p>}
      <RecordsWait names={view.waiting} />
    </>
  );
}

function Finished({ view }: { view: PublicView }) {
  return (
    <div class="wall_still">
      <h1 class="stem">The review is finished</h1>
      {view.standings ? <WallStandings rows={view.standings} /> : <p>Your own marks are on your own page.</p>}
      {view.cautions[0] && <p class="wall_caution">{view.cautions[0]}</p>}
    </div>
  );
}

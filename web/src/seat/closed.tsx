import "./closed.css";
import { ItemPicture } from "../parts/picture";
import { PlaceRows } from "../parts/place_rows";
import { RecordsWait } from "../parts/records_wait";
import { ResultRows } from "../parts/rows";
import { TurnsLine, TypedTwice } from "../parts/turns";
import { RecordPlate } from "../record/record_plate";
import type { OptionResult, OwnResult, OwnView, PublicView, ResultFace } from "../wire";
import { signed } from "../words/certainty";
import { keyWords, marksWord } from "../words/numbers";
import { BY_HOST, VERDICT_MARK, VERDICT_NOTE, VERDICT_WORD } from "../words/verdicts";

/** A closed round at the seat: own result, key and shares; with the record also the reasons. */
export function Closed({ view, own, result }: { view: PublicView; own: OwnView | null; result: ResultFace }) {
  const mine = own?.result?.round === view.round ? own.result : null;
  const explained = view.phase === "explained";
  const choice = own?.answer?.round === view.round ? own.answer.choice : [];
  const again = own?.second?.round === view.round ? own.second.choice : [];
  const second = view.second ?? null;
  return (
    <div class="closed">
      <h1 class="stem" id="stem" tabIndex={-1}>
        {view.item?.stem}
      </h1>
      {view.item?.picture && <ItemPicture picture={view.item.picture} />}
      {result.by_host && <p class="by_host">{BY_HOST}</p>}
      <KeyLine result={result} pick={view.item?.pick ?? 1} />
      {result.rekeyed && <p class="closed_rekeyed">⟳ {result.rekeyed}</p>}
      {explained && mine && <OwnReasons mine={mine} why={result.why} />}
      {second && <TurnsLine result={result} second={second} />}
      {result.rows.length > 0 && <PlaceRows rows={result.rows} chosen={choice} again={second?.rows} />}
      {result.options.length > 0 && (
        <ResultRows
          options={result.options}
          chosen={choice}
          again={second?.options}
          chosenAgain={again}
          {...(explained ? { below: reasonBelow(choice) } : {})}
        />
      )}
      <TypedTwice first={result.typed} second={second?.typed} />
      {explained && !mine && <Why why={result.why} />}
      {explained && view.records.map((record) => <RecordPlate key={record.muscle} record={record} />)}
      {explained && <RecordsWait names={view.waiting} />}
      {explained && !view.group && !own?.flag && (
        <p class="closed_hint">If an answer looks wrong, flag it.</p>
      )}
      {!explained && mine && <VerdictBar mine={mine} />}
      {!explained && !mine && <p class="verdict_bar">Round closed. Waiting for your result …</p>}
    </div>
  );
}

/** With options the key is marked in its row, and nothing above the rows may change its height. */
function KeyLine({ result, pick }: { result: ResultFace; pick: number }) {
  return (
    <p class="closed_key">
      {result.options.length + result.rows.length > 0 ? (
        `Round closed: ${result.answered} of ${result.of} answered.`
      ) : (
        <>
          The key: <b class="closed_term">{keyWords(result.key_text, pick)}</b>
        </>
      )}
    </p>
  );
}

/** One's own choice comes first and at the top; here the others say what they really are. */
function reasonBelow(choice: readonly string[]) {
  return (option: OptionResult) =>
    option.reason && !choice.includes(option.letter) && !option.is_key ? (
      <p class="row_below">{option.reason}</p>
    ) : null;
}

function VerdictBar({ mine }: { mine: OwnResult }) {
  return (
    <div class="verdict_bar">
      <Verdict mine={mine} />
    </div>
  );
}

function Verdict({ mine }: { mine: OwnResult }) {
  const note = VERDICT_NOTE[mine.verdict];
  const counted = mine.verdict === "right" || mine.verdict === "part" || mine.verdict === "wrong";
  return (
    <>
      <p class="verdict">
        <span class="verdict_mark" aria-hidden="true">
          {VERDICT_MARK[mine.verdict]}
        </span>
        <span>
          <b>{VERDICT_WORD[mine.verdict]}</b>
          {counted && ` · ${marksWord(mine.mark)}`}
          {typeof mine.certainty_mark === "number" && (
            <>
              {" · "}
              <span class="verdict_part">certainty {signed(mine.certainty_mark)}</span>
            </>
          )}
        </span>
      </p>
      {note && <p class="verdict_note">{note}</p>}
      {mine.second && (
        <p class="verdict_note">
          After talking: <b>{VERDICT_WORD[mine.second]}</b>. Your first answer counts for marks.
        </p>
      )}
    </>
  );
}

function OwnReasons({ mine, why }: { mine: OwnResult; why: string | null }) {
  return (
    <section class="own" aria-label="Your answer">
      <Verdict mine={mine} />
      {mine.reasons.map((reason) => (
        <div key={reason.text} class="own_reason">
          <p class="own_choice">
            <span aria-hidden="true">{reason.right ? "✓" : "✕"}</span>
            <span class="unseen">{reason.right ? "right: " : "wrong: "}</span> {reason.text}
          </p>
          <p>{reason.reason}</p>
        </div>
      ))}
      {why !== null && !isSaid(why, mine) && <Why why={why} />}
    </section>
  );
}

/** Whether one's own reasons say it already: in one piece, or row by row. */
function isSaid(why: string, mine: OwnResult): boolean {
  if (mine.reasons.some(({ reason }) => reason === why)) return true;
  return mine.reasons.length > 1 && why.split(". ").every((one) => saysSo(mine, one));
}

function saysSo(mine: OwnResult, sentence: string): boolean {
  return mine.reasons.some(({ reason }) => reason.includes(sentence));
}

function Why({ why }: { why: string | null }) {
  if (!why) return null;
  return (
    <p class="own_why">
      <b>Why:</b> {why}
    </p>
  );
}

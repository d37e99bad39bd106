import { OFFERED_AGAIN_MS } from "../seat/taking_time";
import type { ClockFace, OwnView, PublicView } from "../wire";
import { countOf, keyWords, marksText, marksWord, secondsWords } from "./numbers";
import { turnText } from "./stations";
import { HELD, VERDICT_WORD } from "./verdicts";

/** What a page shows at one moment, as far as it has to be said aloud. */
export interface Shown {
  public: PublicView;
  own: OwnView | null;
}

/** What the live region says when the page changes from one view to the next; null for nothing. */
export function announcement(before: Shown | null, after: Shown): string | null {
  const was = before?.public;
  const is = after.public;
  if (was === undefined || was.phase !== is.phase || was.round !== is.round) {
    return waitsForResult(after) ? null : phaseText(after);
  }
  if (is.phase === "stations" && hasMoved(before, after)) return phaseText(after);
  if (is.group && was.group && was.group.paused !== is.group.paused) return pauseText(is.group.paused);
  if (isShownNow(was, is)) return waitsForResult(after) ? null : phaseText(after);
  if (
    is.phase === "stations" ||
    is.phase === "answering" ||
    is.phase === "talking" ||
    is.phase === "answering again"
  )
    return clockText(was.clock, is.clock);
  if (showsResult(is) && resultKnown(after) && before && !resultKnown(before)) return phaseText(after);
  if (was.result?.struck !== is.result?.struck)
    return is.result?.struck ? "This item is struck." : "This item counts again.";
  if (was.result && is.result && was.result.rekeyed !== is.result.rekeyed)
    return is.result.rekeyed || "The key as it was dealt counts again.";
  return null;
}

function phaseText(shown: Shown): string {
  const view = shown.public;
  switch (view.phase) {
    case "preparing":
      return "The host is preparing the review.";
    case "gathering":
      if (view.group) return "The door is open. The first round opens when all who are here are ready.";
      return "The door is open. The host will open the first round.";
    case "stations":
      return view.stations ? `${turnText(view.stations, shown.own)} ${bellText(view)}`.trim() : "";
    case "answering":
      return `Round ${view.round} of ${view.rounds} is open. ${timeText(view.clock)}${offerText(shown)}`;
    case "talking":
      return `Talk with your neighbour about round ${view.round}. ${timeText(view.clock)}`;
    case "answering again":
      return `Answer round ${view.round} again. ${timeText(view.clock)}${offerText(shown)}`;
    case "closed":
      return closedText(shown);
    case "explained":
      if (view.group) return `${closedText(shown)} The record is shown until all are ready.`;
      return "The record is shown.";
    case "finished":
      return `The review is finished. ${totalText(shown.own)}`.trim();
  }
}

/** Whether a turn has begun: a seat says so once its own station has come. */
function hasMoved(before: Shown | null, after: Shown): boolean {
  const [was, is] = [before?.public.stations, after.public.stations];
  if (was?.turn !== is?.turn || was?.over !== is?.over) return after.own === null || is?.over === true;
  return (
    after.own !== null && before?.own?.station?.number !== after.own.station?.number && is?.over === false
  );
}

/** Where a seat may take more time this is said at once if it could not be said early enough later. */
function offerText({ public: view, own }: Shown): string {
  const limit = view.clock?.limit_ms ?? null;
  if (!view.offers_time || !own?.time_to_take || limit === null || limit > OFFERED_AGAIN_MS) return "";
  return " Press plus for more time.";
}

function bellText(view: PublicView): string {
  return view.stations?.over ? "" : timeText(view.clock);
}

/** Whether a result that was held has come. */
function isShownNow(was: PublicView, is: PublicView): boolean {
  return is.phase === "closed" && was.result === null && is.result !== null;
}

function closedText(shown: Shown): string {
  if (shown.public.result === null) return `Round ${shown.public.round} is closed. ${HELD}`;
  return `Round ${shown.public.round} is closed. ${ownText(shown)}${keyText(shown.public)}`.trim();
}

function pauseText(paused: boolean): string {
  return paused ? "Somebody asked for a pause. No clock runs." : "The group goes on.";
}

function timeText(clock: ClockFace | null): string {
  return clock?.limit_ms ? `You have ${secondsWords(clock.limit_ms)}.` : "There is no time limit.";
}

function clockText(was: ClockFace | null, is: ClockFace | null): string | null {
  if (was === null || is === null) return null;
  if (was.paused !== is.paused) return is.paused ? "The clock is paused." : "The clock runs again.";
  const added = (is.limit_ms ?? 0) - (was.limit_ms ?? 0);
  return added > 0 ? `${secondsWords(added)} added.` : null;
}

/** A seat's own result follows a closing at once: both are said in one breath. */
function waitsForResult(shown: Shown): boolean {
  return showsResult(shown.public) && shown.own !== null && !resultKnown(shown);
}

/** Whether results are new in this phase; without a host the record comes with them. */
function showsResult(view: PublicView): boolean {
  if (view.result === null) return false;
  return view.phase === "closed" || (view.phase === "explained" && view.group !== null);
}

function resultKnown(shown: Shown): boolean {
  return shown.own?.result?.round === shown.public.round;
}

function ownText(shown: Shown): string {
  const result = shown.own?.result;
  if (!result || result.round !== shown.public.round) return "";
  const word = VERDICT_WORD[result.verdict];
  if (result.verdict === "none") return "You gave no answer. ";
  if (result.verdict === "struck" || result.verdict === "not counted") return `Your answer: ${word}. `;
  const again = result.second ? `After talking: ${VERDICT_WORD[result.second]}. ` : "";
  return `Your answer is ${word}: ${marksWord(result.mark)}. ${again}`;
}

function keyText(view: PublicView): string {
  const terms = view.result?.key_text ?? [];
  return terms.length ? `The key: ${keyWords(terms, view.item?.pick ?? 1)}.` : "";
}

function totalText(own: OwnView | null): string {
  return own ? `You have ${marksText(own.marks)} of ${countOf(own.of, "mark")}.` : "";
}

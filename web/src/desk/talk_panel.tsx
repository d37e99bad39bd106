import "./talk_panel.css";
import { useEffect } from "preact/hooks";
import { useStore } from "../line/store";
import type { Announcer } from "../parts/announcer";
import type { ChangeFace, DeskView, RightFace, TalkPanel as Talk } from "../wire";
import { percent } from "../words/numbers";
import { chooseTalkTime, TALK_TIMES, talkSeconds, talkText } from "./talk_time";

/** What is advised after the first answers, and what became of them; never on the wall. */
export function TalkPanel({ talk, view }: { talk: Talk; view: DeskView }) {
  const offered = view.actions.includes("let_talk") && talk.round === view.public.round;
  return (
    <section class="talk" aria-label="Talk, then answer again">
      {offered ? <Advised talk={talk} /> : <Outcome talk={talk} />}
    </section>
  );
}

/** Says the advice aloud once there is one. */
export function useAdvice(announcer: Announcer, view: DeskView): void {
  const advised = view.actions.includes("let_talk") ? view.talks.at(-1) : undefined;
  const advice = advised ? adviceText(advised) : "";
  useEffect(() => {
    if (advice) announcer.say(advice);
  }, [announcer, advice]);
}

function Advised({ talk }: { talk: Talk }) {
  const seconds = useStore(talkSeconds);
  return (
    <>
      <p class="talk_words">{adviceText(talk)}</p>
      <label class="talk_time">
        <span>talk for</span>
        <select
          class="field_input talk_select"
          value={String(seconds)}
          onChange={(event) => chooseTalkTime(Number(event.currentTarget.value))}
        >
          {TALK_TIMES.map((time) => (
            <option key={time} value={String(time)}>
              {talkText(time)}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}

/** The published thresholds in a sentence. */
export function adviceText(talk: Talk): string {
  const right = closely(talk.first);
  switch (talk.advice) {
    case "explain":
      return `${right}, fewer than 35 %: too few to teach each other. Advised: explain it again.`;
    case "talk":
      return `${right}, between 35 and 70 %. Advised: let them talk, then answer again.`;
    case "go on":
      return `${right}, more than 70 %. Advised: go on.`;
    default:
      return "Nobody answered, so nothing is advised.";
  }
}

/** With a decimal, so that what lies just beside a threshold does not read as if it lay on it. */
function closely({ right, of }: RightFace): string {
  return `${right} of ${of} right (${of === 0 ? "–" : ((100 * right) / of).toFixed(1)} %)`;
}

function Outcome({ talk }: { talk: Talk }) {
  const { first, second, change, twin, twin_round } = talk;
  return (
    <>
      <p class="talk_words">
        First: <b>{rightText(first)}</b>.{" "}
        {second && (
          <>
            Again: <b>{rightText({ right: second.right, of: second.answered, share: null })}</b>.{" "}
          </>
        )}
        {twin && (
          <>
            Twin, round {twin_round}: <b>{rightText(twin)}</b>.
          </>
        )}
      </p>
      {change && <Changes change={change} />}
    </>
  );
}

/** Who changed how, over those who answered both times, and the normalised gain. */
function Changes({ change }: { change: ChangeFace }) {
  return (
    <>
      <dl class="talk_changes">
        <Count word="right, stayed right" count={change.right_right} />
        <Count word="wrong, now right" count={change.wrong_right} />
        <Count word="right, now wrong" count={change.right_wrong} />
        <Count word="wrong, stayed wrong" count={change.wrong_wrong} />
        <div>
          <dt>normalised gain</dt>
          <dd>{change.gain === null ? "none" : change.gain.toFixed(2).replace("-", "\u2212")}</dd>
        </div>
      </dl>
      {change.no_gain && <p class="talk_note">{change.no_gain}</p>}
    </>
  );
}

function Count({ word, count }: { word: string; count: number }) {
  return (
    <div>
      <dt>{word}</dt>
      <dd>{count}</dd>
    </div>
  );
}

function rightText({ right, of }: RightFace): string {
  return of === 0 ? "nobody answered" : `${right} of ${of} right (${percent(right / of)})`;
}

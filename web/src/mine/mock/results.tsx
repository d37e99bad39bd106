import { useEffect, useState } from "preact/hooks";
import { useStore } from "../../line/store";
import type { Look, PracticeSet } from "../../wire";
import { keyWords, listed, marksText } from "../../words/numbers";
import type { Given } from "../look_box";
import { answerWords, knownOf, LOOK_MARK, verdictText } from "../outcome";
import type { MineSession } from "../session";
import { Cautions, Shown } from "../shown";

/** The marked sheet: every line with one's answer, the verdict and the key; each opens to its record. */
export function Results({ set, session }: { set: PracticeSet; session: MineSession }) {
  useStore(session.changes);
  const line = useStore(session.line);
  useEffect(() => document.getElementById("stem")?.focus({ preventScroll: true }), []);
  const lost = line === "lost";
  return (
    <div class="results">
      <h1 class="stem" id="stem" tabIndex={-1}>
        {set.title}
      </h1>
      <p class="results_total" role="status">
        {totalText(set, session, lost)}
      </p>
      <ol class="results_lines">
        {set.looks.map((look, station) => (
          <ResultLine
            key={look.id}
            number={station + 1}
            look={look}
            given={session.given(look.id)}
            lost={lost}
          />
        ))}
      </ol>
      <Cautions texts={cautionsOf(set)} />
      <p class="today_act no-print">
        <button class="button" type="button" onClick={() => window.print()}>
          Print the sheet
        </button>
        <a class="button button-main" href="#/">
          To today's page
        </a>
      </p>
    </div>
  );
}

function ResultLine(props: { number: number; look: Look; given: Given | null; lost: boolean }) {
  const { look, given, lost } = props;
  const [open, setOpen] = useState(false);
  const known = given && knownOf(look, given);
  const words = given ? answerWords(look, given.answer) : [];
  return (
    <li class="result">
      <span class="sheet_number">{props.number}</span>
      <div>
        <p class="look_stem">{look.face.stem}</p>
        <p>
          <span aria-hidden="true">{known ? LOOK_MARK[known.verdict] : "…"}</span>{" "}
          <b>{words.length > 0 ? listed(words) : "blank"}</b>{" "}
          <span class="look_word">
            {known ? verdictText(known) : lost ? "marked when you are back on line" : "being marked …"}
          </span>
        </p>
        <p>
          key: <b>{keyWords(look.solution.key_text, look.face.pick)}</b>
        </p>
        {known?.because && <p class="result_because">{known.because}</p>}
        <details class="no-print" onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary>Why, and the record</summary>
          {open && given && <Shown look={look} given={given} lost={lost} />}
        </details>
      </div>
    </li>
  );
}

function totalText(set: PracticeSet, session: MineSession, lost: boolean): string {
  const known = set.looks.map((look) => {
    const given = session.given(look.id);
    return given && knownOf(look, given);
  });
  const marks = known.reduce((sum, one) => sum + (one?.mark ?? 0), 0);
  const open = known.filter((one) => one === null).length;
  const rest =
    open === 0 ? "" : `; ${open} ${lost ? "to be marked when you are back on line" : "being marked"}`;
  return `${marksText(marks)} of ${set.looks.length} marks${rest}`;
}

function cautionsOf(set: PracticeSet): string[] {
  return [...new Set(set.looks.flatMap((look) => look.solution.cautions))];
}

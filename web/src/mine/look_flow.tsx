import { useEffect, useMemo, useState } from "preact/hooks";
import { useStore } from "../line/store";
import type { Look } from "../wire";
import { countOf } from "../words/numbers";
import { AskForm } from "./ask_form";
import { LookFlagPart } from "./look_flag";
import { knownOf, verdictText } from "./outcome";
import { answerTo, type MineSession } from "./session";
import { Shown } from "./shown";

/** Looks one after another: asked, answered, shown; at the end what came of them. */
export function LookFlow(props: {
  title: string;
  looks: readonly Look[];
  session: MineSession;
  say: (text: string) => void;
}) {
  const { session, say } = props;
  // what is asked stays as it was when one began, whatever the server sends meanwhile
  const looks = useMemo(() => props.looks, []);
  const first = looks.findIndex((look) => session.given(look.id) === null);
  const [at, setAt] = useState(first === -1 ? looks.length : first);
  useStore(session.changes);
  const look = looks[at];
  if (look === undefined) return <LookEnd {...props} looks={looks} />;
  const next = nextUnanswered(looks, at, session);
  return (
    <>
      <div class="look_head">
        <p class="look_count">
          {props.title} ·{" "}
          <span class="look_place">
            {at + 1} of {looks.length}
          </span>
        </p>
        {look.flag && <LookFlagPart key={look.id} look={look} flag={look.flag} session={session} say={say} />}
      </div>
      <OneLook
        key={look.id}
        look={look}
        session={session}
        say={say}
        next={{ text: next === looks.length ? "To the end" : "Next", go: () => setAt(next) }}
      />
    </>
  );
}

function OneLook(props: {
  look: Look;
  session: MineSession;
  say: (text: string) => void;
  next: { text: string; go: () => void };
}) {
  const { look, session, say } = props;
  const line = useStore(session.line);
  const given = session.given(look.id);
  const known = given && knownOf(look, given);
  const spoken =
    given === null ? "" : known ? `${verdictText(known)}.` : line === "lost" ? "Answer kept." : "";
  useEffect(() => {
    if (spoken) say(`${spoken} The key: ${look.solution.key_text.join(", ")}.`);
  }, [spoken, say, look]);
  if (given) return <Shown look={look} given={given} lost={line === "lost"} next={props.next} />;
  return (
    <AskForm
      look={look}
      say={say}
      onAnswer={(draft, tookMs) => void session.answer([answerTo(look, draft, tookMs, Date.now())])}
    />
  );
}

function nextUnanswered(looks: readonly Look[], at: number, session: MineSession): number {
  const next = looks.findIndex((look, index) => index > at && session.given(look.id) === null);
  return next === -1 ? looks.length : next;
}

function LookEnd(props: { title: string; looks: readonly Look[]; session: MineSession }) {
  const { looks, session } = props;
  useEffect(() => {
    document.getElementById("stem")?.focus({ preventScroll: true });
    window.scrollTo({ top: 0 });
    void session.refresh();
  }, [session]);
  return (
    <div class="look_end">
      <h1 class="stem" id="stem" tabIndex={-1}>
        {props.title}: done
      </h1>
      <p>{endText(looks, session)}</p>
      <ul class="look_list">
        {looks.map((look) => (
          <li key={look.id}>
            <EndLine look={look} session={session} />
          </li>
        ))}
      </ul>
      <p>
        <a class="button button-main" href="#/">
          To today's page
        </a>
      </p>
    </div>
  );
}

function EndLine({ look, session }: { look: Look; session: MineSession }) {
  const given = session.given(look.id);
  const known = given && knownOf(look, given);
  return (
    <>
      <span class="look_stem">{look.face.stem}</span>
      <span class="look_word">
        {known ? verdictText(known) : "kept"}
        {known?.due && ` · asked again on ${known.due}`}
      </span>
    </>
  );
}

function endText(looks: readonly Look[], session: MineSession): string {
  if (looks.length === 0) return "Everything here has been looked at again.";
  const known = looks.map((look) => {
    const given = session.given(look.id);
    return given && knownOf(look, given);
  });
  const right = known.filter((one) => one?.verdict === "right").length;
  const open = known.filter((one) => one === null).length;
  const rest = open === 0 ? "" : ` ${countOf(open, "answer")} will be marked when you are back on line.`;
  return `${right} of ${countOf(looks.length, "item")} right.${rest}`;
}

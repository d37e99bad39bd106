import "./mock.css";
import { useState } from "preact/hooks";
import { useStore } from "../../line/store";
import { isEmpty, shownDraft } from "../../seat/draft";
import type { PracticeSet } from "../../wire";
import { answerTo, type MineSession } from "../session";
import { MockReview } from "./mock_review";
import { MockStart } from "./mock_start";
import { MockWalk } from "./mock_walk";
import { Results } from "./results";
import { beginWalk, stationOf, type Walk } from "./walk";
import { useWalk } from "./walking";

/** A mock practical: chosen where to begin, walked past all stations, looked over, handed in, read. */
export function MockPage(props: { set: PracticeSet; session: MineSession; say: (text: string) => void }) {
  const { set, session, say } = props;
  const [walk, setWalk] = useWalk(set.id, set.looks.length, say);
  const [opened, setOpened] = useState<number | null>(null);
  useStore(session.changes);
  const handIn = (done: Walk) => {
    setWalk({ ...done, handedIn: true });
    void session.answer(answersOf(set, done));
    window.scrollTo({ top: 0 });
  };
  if (walk?.handedIn || set.looks.every((look) => session.given(look.id) !== null))
    return <Results set={set} session={session} />;
  if (walk === null) {
    const begin = (start: number, stationMs: number | null) =>
      setWalk(beginWalk(set.looks.length, start, stationMs));
    return <MockStart set={set} onBegin={begin} />;
  }
  if (stationOf(walk) !== null) return <MockWalk {...{ set, walk, setWalk, say }} />;
  return <MockReview {...{ set, walk, setWalk, say, opened, onOpen: setOpened, onHandIn: handIn }} />;
}

/** The whole sheet as answers; a blank is an answer too, and wrong. */
function answersOf(set: PracticeSet, walk: Walk) {
  return set.looks.map((look, station) => {
    const kept = walk.sheet[station] ?? { choice: [], typed: [] };
    const draft = isEmpty(kept) ? kept : shownDraft(look.face, kept);
    return answerTo(look, draft, walk.spent[station] ?? 0, Date.now());
  });
}

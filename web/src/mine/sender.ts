import type { LookAnswer, LookOutcomes } from "../wire";
import { type Fetched, isLasting, type MineApi } from "./api";
import type { LookBox } from "./look_box";

/** Answers in one message, at most; the server takes no more. */
const MOST_AT_ONCE = 100;
const LOOKS = "/mine/api/looks";

/** Makes what sends all waiting answers, one message after another. It ends when none waits, or none goes. */
export function makeSender(
  api: MineApi,
  box: LookBox,
  /** Told of every reply, after the box has taken it in. */
  hear: (reply: Fetched<LookOutcomes>) => void,
): () => Promise<void> {
  let running: Promise<void> | null = null;

  async function sendBatch(answers: readonly LookAnswer[]): Promise<boolean> {
    const reply = await api.send<LookOutcomes>("POST", LOOKS, { answers });
    if (reply.kind === "fresh") for (const outcome of reply.value.outcomes) box.settle(outcome);
    const refused = reply.kind === "problem" && isLasting(reply.status);
    if (refused && answers.length === 1)
      for (const answer of answers) box.settle(notTaken(answer, reply.text));
    hear(reply);
    // one answer that cannot be taken must not hold up the others
    if (refused && answers.length > 1) return eachAlone(answers);
    return refused || reply.kind === "fresh";
  }

  async function eachAlone(answers: readonly LookAnswer[]): Promise<boolean> {
    for (const answer of answers) if (!(await sendBatch([answer]))) return false;
    return true;
  }

  async function sendAll(): Promise<void> {
    let waiting = box.waiting();
    let before = Number.POSITIVE_INFINITY;
    while (waiting.length > 0 && waiting.length < before) {
      before = waiting.length;
      if (!(await sendBatch(waiting.slice(0, MOST_AT_ONCE)))) return;
      waiting = box.waiting();
    }
  }

  return async () => {
    while (running !== null) await running;
    running = sendAll().finally(() => {
      running = null;
    });
    await running;
  };
}

/** What is shown of an answer that the server will never take, with its reason. */
function notTaken(answer: LookAnswer, because: string) {
  return { look: answer.look, verdict: "doubtful" as const, mark: 0, because, due: null };
}

import type { SubmitAnswer } from "../wire";

/** Where answers wait that the server has not acknowledged yet. */
export interface Outbox {
  /** Puts an answer in; it replaces an older one for the same round. */
  put(answer: SubmitAnswer): void;
  /** Takes out the answer with this id; a newer one for the same round stays. */
  settle(id: string): void;
  waiting(): readonly SubmitAnswer[];
}

/** The part of `Storage` that is needed: tests give a plain object. */
export interface Shelf {
  getItem(name: string): string | null;
  setItem(name: string, text: string): void;
  removeItem(name: string): void;
}

/** An outbox that survives a reload, kept on the shelf under this name. */
export function makeOutbox(shelf: Shelf, name: string): Outbox {
  let answers = readAnswers(shelf, name);
  const keep = (next: SubmitAnswer[]) => {
    answers = next;
    writeAnswers(shelf, name, answers);
  };
  return {
    put: (answer) => keep([...answers.filter((one) => !isForSame(one, answer)), answer]),
    settle: (id) => keep(answers.filter((one) => one.id !== id)),
    waiting: () => answers,
  };
}

/** A second answer, after talking, takes no first one's place. */
function isForSame(one: SubmitAnswer, other: SubmitAnswer): boolean {
  return one.round === other.round && Boolean(one.again) === Boolean(other.again);
}

function readAnswers(shelf: Shelf, name: string): SubmitAnswer[] {
  try {
    const found: unknown = JSON.parse(shelf.getItem(name) ?? "[]");
    return Array.isArray(found) ? found.filter(isAnswer) : [];
  } catch {
    return []; // a spoilt entry must not keep anybody out of the room
  }
}

function isAnswer(value: unknown): value is SubmitAnswer {
  const answer = value as Partial<SubmitAnswer> | null;
  return (
    answer?.type === "submit_answer" && typeof answer.id === "string" && typeof answer.round === "number"
  );
}

function writeAnswers(shelf: Shelf, name: string, answers: readonly SubmitAnswer[]): void {
  try {
    if (answers.length === 0) shelf.removeItem(name);
    else shelf.setItem(name, JSON.stringify(answers));
  } catch {
    // private windows may refuse storage: the answer still waits in memory
  }
}

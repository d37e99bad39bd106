import type { Line } from "../line/line";
import type { Outbox } from "../line/outbox";
import { mustRepeat } from "../line/persist";
import { newMessageId } from "../line/random";
import { makeStore, type Store } from "../line/store";
import type { SubmitAnswer } from "../wire";
import type { Certainty } from "../words/certainty";

/** What became of the last answer handed in. */
export interface Handed {
  answer: SubmitAnswer;
  state: "sending" | "kept" | "received" | "refused";
  /** The server's sentence when it refused. */
  text: string;
}

export interface HandIn {
  handed: Store<Handed | null>;
  handIn(
    round: number,
    choice: readonly string[],
    typed: readonly string[],
    certainty?: Certainty,
    /** Whether it is a second answer, after talking. */
    again?: boolean,
  ): Promise<void>;
  /** Sends everything that still waits; called after every return to the seat. */
  sendWaiting(): Promise<void>;
}

const RETRY_MS = 1500;

/** Hands answers in through the outbox: each stays there until the server has it or refuses it. */
export function makeHandIn(line: Line, outbox: Outbox, onReceived: (answer: SubmitAnswer) => void): HandIn {
  const handed = makeStore<Handed | null>(firstWaiting(outbox));
  const isLatest = (answer: SubmitAnswer) => handed.get()?.answer.id === answer.id;

  async function send(answer: SubmitAnswer): Promise<void> {
    handed.set({ answer, state: "sending", text: "" });
    const reply = await line.sayAgain(answer);
    if (mustRepeat(reply)) {
      if (isLatest(answer)) handed.set({ answer, state: "kept", text: reply.text ?? "" });
      if (line.state.get() === "open") window.setTimeout(() => void sendWaiting(), RETRY_MS);
      return;
    }
    outbox.settle(answer.id);
    if (!isLatest(answer)) return;
    const refused = reply.result === "refused";
    handed.set({ answer, state: refused ? "refused" : "received", text: reply.text ?? "" });
    if (!refused) onReceived(answer);
  }

  async function sendWaiting(): Promise<void> {
    for (const answer of outbox.waiting()) await send(answer);
  }

  return {
    handed,
    sendWaiting,
    handIn(round, choice, typed, certainty, again) {
      const answer: SubmitAnswer = {
        id: newMessageId(),
        type: "submit_answer",
        round,
        choice: [...choice],
        typed: [...typed],
        ...(certainty && { certainty }),
        ...(again && { again }),
      };
      outbox.put(answer);
      return send(answer);
    },
  };
}

/** Whether the server has an answer to this round, the first or the one `again`, as far as this page has seen. */
export function isHandedIn(handed: Handed | null, asked: { round: number; again: boolean }): boolean {
  if (handed?.state !== "received" || handed.answer.round !== asked.round) return false;
  return Boolean(handed.answer.again) === asked.again;
}

function firstWaiting(outbox: Outbox): Handed | null {
  const answer = outbox.waiting().at(-1);
  return answer ? { answer, state: "kept", text: "" } : null;
}

import { makeStore, type Store } from "../line/store";
import { type Draft, written } from "../seat/draft";
import type { Look, LookAnswer, Today } from "../wire";
import type { Fetched, MineApi } from "./api";
import type { Given, LookBox } from "./look_box";
import { makeSender } from "./sender";

/** What the page knows, and what it does for the player. */
export interface MineSession {
  api: MineApi;
  today: Store<Fetched<Today> | null>;
  /** Whether the server answered when it was last asked. */
  line: Store<"open" | "lost">;
  /** Answers that are kept here and not yet with the server. */
  waiting: Store<number>;
  /** Goes up with every answer given or settled, so that pages look into the box again. */
  changes: Store<number>;
  /** What the server has against taking answers, in its words. */
  complaint: Store<string>;
  given(look: string): Given | null;
  /** Keeps the answers, then sends them; resolves when sending has come to an end, well or not. */
  answer(answers: readonly LookAnswer[]): Promise<void>;
  read<T>(path: string): Promise<Fetched<T>>;
  refresh(): Promise<void>;
  /** Sends whatever still waits. */
  sendWaiting(): Promise<void>;
}

export function makeMineSession(api: MineApi, box: LookBox): MineSession {
  const line = makeStore<"open" | "lost">("open");
  const waiting = makeStore(box.waiting().length);
  const changes = makeStore(0);
  const complaint = makeStore("");
  const today = makeStore<Fetched<Today> | null>(null);
  const hear = (reply: Fetched<unknown>) =>
    line.set(reply.kind === "no line" || reply.kind === "kept" ? "lost" : "open");
  const note = () => {
    waiting.set(box.waiting().length);
    changes.set(changes.get() + 1);
  };
  const sendWaiting = makeSender(api, box, (reply) => {
    hear(reply);
    complaint.set(reply.kind === "problem" ? reply.text : "");
    note();
  });
  const read = async <T>(path: string): Promise<Fetched<T>> => {
    const fetched = await api.read<T>(path);
    hear(fetched);
    return fetched;
  };
  return {
    ...{ api, today, line, waiting, changes, complaint, sendWaiting, read },
    given: box.of,
    async answer(answers) {
      for (const answer of answers) box.put(answer);
      note();
      await sendWaiting();
    },
    async refresh() {
      today.set(await read<Today>("/mine/api/today"));
    },
  };
}

/** The answer to a look as it is handed in. `tookMs` counts from when the stem was shown. */
export function answerTo(look: Look, draft: Draft, tookMs: number, now: number): LookAnswer {
  return {
    look: look.id,
    choice: [...draft.choice],
    typed: written(draft),
    certainty: null,
    took_ms: Math.min(Math.round(tookMs), LONGEST_MS),
    answered_at: now,
  };
}

const LONGEST_MS = 24 * 3_600_000;

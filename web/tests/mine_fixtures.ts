import { vi } from "vitest";
import type { Fetched, MineApi } from "../src/mine/api";
import { type LookBox, makeLookBox, memoryDrawer } from "../src/mine/look_box";
import { type MineSession, makeMineSession } from "../src/mine/session";
import type { Look, LookAnswer, LookAnswers, LookOutcome } from "../src/wire";

/** A look at the nerve of the coracobrachialis, changed where a test says so. */
export function lookOf(id: string, change: Partial<Look> = {}): Look {
  const texts = ["axillary nerve", "musculocutaneous nerve", "median nerve"];
  return {
    id,
    set: "s",
    face: {
      round: 1,
      family: "nerve",
      format: "one_best",
      stem: `Which nerve supplies the coracobrachialis? (${id})`,
      options: texts.map((text, n) => ({ letter: "ABC"[n] ?? "", text })),
      pick: 1,
      stems: [],
      warm_up: false,
    },
    seconds: 30,
    region: "arm",
    label: "nerve of coracobrachialis",
    missed: null,
    solution: {
      key: ["B"],
      options: texts.map((text, n) => ({
        letter: "ABC"[n] ?? "",
        text,
        is_key: n === 1,
        reason: `The ${text} is itself.`,
      })),
      rows: [],
      accepted: [],
      key_text: ["musculocutaneous nerve"],
      why: "The musculocutaneous nerve pierces it.",
      contrast: null,
      records: [],
      cautions: [],
    },
    ...change,
  };
}

/** The same fact to be typed. */
export function typedLook(id: string, pick = 1): Look {
  const look = lookOf(id);
  return {
    ...look,
    face: { ...look.face, format: pick === 1 ? "typed" : "free_list", options: [], pick },
    solution: {
      ...look.solution,
      key: [],
      options: [],
      accepted: [
        { text: "biceps brachii", terms: ["biceps brachii", "biceps brachii muscle"] },
        { text: "brachialis", terms: ["brachialis"] },
      ],
    },
  };
}

export function answerOf(look: string, change: Partial<LookAnswer> = {}): LookAnswer {
  return {
    look,
    choice: ["B"],
    typed: [],
    certainty: null,
    took_ms: 4000,
    answered_at: 1_951_732_800_000,
    ...change,
  };
}

export function outcomeOf(look: string, change: Partial<LookOutcome> = {}): LookOutcome {
  return { look, verdict: "right", mark: 1, because: "", due: "2031-11-11", ...change };
}

/** As the key "B" wants it; whatever is typed counts. */
function marked({ look, choice, typed }: LookAnswer): LookOutcome {
  if (choice.length + typed.length === 0) return outcomeOf(look, { verdict: "none", mark: 0 });
  const right = typed.length > 0 || choice[0] === "B";
  return outcomeOf(look, right ? {} : { verdict: "wrong", mark: 0 });
}

/** A server that takes answers as it is told to. */
export interface FakeServer {
  /** What it says to a message; by default it takes everything. */
  reply: (answers: readonly LookAnswer[]) => Fetched<unknown>;
  /** The first answer to each look that it has taken. */
  taken: Map<string, LookAnswer>;
  messages: number;
}

export function fakeServer(): FakeServer & { api: MineApi } {
  const server: FakeServer = { taken: new Map(), messages: 0, reply: takes };
  function takes(answers: readonly LookAnswer[]): Fetched<unknown> {
    for (const answer of answers) if (!server.taken.has(answer.look)) server.taken.set(answer.look, answer);
    return { kind: "fresh", value: { outcomes: answers.map(marked) } };
  }
  const api: MineApi = {
    read: vi.fn(async () => ({ kind: "no line" as const })),
    send: async <T>(_: string, __: string, body?: unknown) => {
      server.messages += 1;
      return server.reply((body as LookAnswers).answers) as Fetched<T>;
    },
    file: async () => ({ kind: "no line" as const }),
  };
  return Object.assign(server, { api });
}

export function sessionWith(api: MineApi, box: LookBox = makeLookBox(memoryDrawer(), "p")): MineSession {
  return makeMineSession(api, box);
}

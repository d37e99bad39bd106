import type { LookAnswer, LookOutcome } from "../wire";

/** An answer given on this device; `outcome` is null until the server has it. */
export interface Given {
  answer: LookAnswer;
  outcome: LookOutcome | null;
}

/** The part of `Storage` that is needed. */
export interface Drawer {
  getItem(name: string): string | null;
  setItem(name: string, text: string): void;
  removeItem(name: string): void;
  names(): string[];
}

/** Answers of one player on this device, each on a slip of its own, so that two tabs cannot overwrite
 * each other's. A slip that still waits is never thrown away. */
export interface LookBox {
  /** Keeps an answer; the first to a look stays. */
  put(answer: LookAnswer): void;
  settle(outcome: LookOutcome): void;
  of(look: string): Given | null;
  waiting(): LookAnswer[];
  /** Throws away settled slips of answers given before this moment (ms). */
  tidy(before: number): void;
}

export function makeLookBox(drawer: Drawer, player: string): LookBox {
  const prefix = `quizroom.look.${player}.`;
  const read = (name: string) => readSlip(drawer.getItem(name));
  const all = () => drawer.names().filter((name) => name.startsWith(prefix));
  const of = (look: string) => read(prefix + look);
  return {
    of,
    put(answer) {
      if (of(answer.look) === null) write(drawer, prefix + answer.look, { answer, outcome: null });
    },
    settle(outcome) {
      const given = of(outcome.look);
      if (given !== null) write(drawer, prefix + outcome.look, { answer: given.answer, outcome });
    },
    waiting: () =>
      all()
        .map(read)
        .flatMap((given) => (given !== null && given.outcome === null ? [given.answer] : []))
        .sort((one, other) => one.answered_at - other.answered_at),
    tidy(before) {
      for (const name of all()) {
        const given = read(name);
        if (given === null || (given.outcome !== null && given.answer.answered_at < before))
          drawer.removeItem(name);
      }
    },
  };
}

/** The browser's lasting storage; where it is refused or full, slips wait in memory. */
export function lastingDrawer(): Drawer {
  const spare = memoryDrawer();
  const safely = <T>(act: () => T, otherwise: () => T): T => {
    try {
      return act();
    } catch {
      return otherwise();
    }
  };
  return {
    getItem: (name) =>
      spare.getItem(name) ??
      safely(
        () => localStorage.getItem(name),
        () => null,
      ),
    setItem: (name, text) =>
      safely(
        () => {
          localStorage.setItem(name, text);
          spare.removeItem(name);
        },
        () => spare.setItem(name, text),
      ),
    removeItem: (name) => {
      spare.removeItem(name);
      safely(
        () => localStorage.removeItem(name),
        () => undefined,
      );
    },
    names: () => [
      ...new Set([
        ...spare.names(),
        ...safely(
          () => Object.keys(localStorage),
          () => [],
        ),
      ]),
    ],
  };
}

export function memoryDrawer(): Drawer {
  const kept = new Map<string, string>();
  return {
    getItem: (name) => kept.get(name) ?? null,
    setItem: (name, text) => void kept.set(name, text),
    removeItem: (name) => void kept.delete(name),
    names: () => [...kept.keys()],
  };
}

function write(drawer: Drawer, name: string, given: Given): void {
  drawer.setItem(name, JSON.stringify(given));
}

function readSlip(text: string | null): Given | null {
  try {
    const found = JSON.parse(text ?? "null") as Given | null;
    return typeof found?.answer?.look === "string" ? found : null;
  } catch {
    return null;
  }
}

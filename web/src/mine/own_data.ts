import type { Shelf } from "../line/outbox";
import { dropKeys, type OwnKey } from "../line/own_key";
import type { Me } from "../wire";

const NO_LINE = "There is no connection to the server. Try again when you are back on line.";
const NOT_DONE = "The server could not do this. Try again in a minute.";
/** What stays on a device whose owner deletes everything: it tells nothing about anybody. */
const STAYS = ["quizroom.theme", "quizroom.keep_results"];

/** What came of asking the server: its answer, or a sentence about what went wrong. */
export type Outcome<T> = { kind: "done"; value: T } | { kind: "problem"; text: string };

/** The server's addresses for what is kept of a player. */
export interface OwnData {
  me(): Promise<Outcome<Me>>;
  file(kind: "json" | "csv"): Promise<Outcome<Blob>>;
  forget(): Promise<Outcome<Me>>;
}

export function ownDataOf(key: OwnKey, ask: typeof fetch = (...args) => fetch(...args)): OwnData {
  const call = async <T>(
    method: string,
    path: string,
    read: (got: Response) => Promise<T>,
  ): Promise<Outcome<T>> => {
    try {
      const got = await ask(`/mine/api/${path}`, {
        method,
        headers: { Authorization: `Bearer ${key}` },
        cache: "no-store",
      });
      return got.ok
        ? { kind: "done", value: await read(got) }
        : { kind: "problem", text: await problemOf(got) };
    } catch {
      return { kind: "problem", text: NO_LINE };
    }
  };
  const asMe = (got: Response) => got.json() as Promise<Me>;
  return {
    me: () => call("GET", "me", asMe),
    file: (kind) => call("GET", `export.${kind}`, (got) => got.blob()),
    forget: () => call("DELETE", "me", asMe),
  };
}

/** Takes everything of a player off this device: keys, handle, seats, answers, what was kept for off-line use. */
export function forgetOnDevice(shelf: Shelf & Pick<Storage, "length" | "key">): void {
  const names = Array.from({ length: shelf.length }, (_, place) => shelf.key(place) ?? "");
  for (const name of names) {
    if (name.startsWith("quizroom.") && !STAYS.includes(name)) shelf.removeItem(name);
  }
  dropKeys(shelf);
}

async function problemOf(got: Response): Promise<string> {
  try {
    const { problem } = (await got.json()) as { problem?: unknown };
    return typeof problem === "string" ? problem : NOT_DONE;
  } catch {
    return NOT_DONE;
  }
}

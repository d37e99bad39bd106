import type { Pages } from "./kept_pages";

/** What came back: the server's word, what was kept of it, its problem in a sentence, or nothing at all. */
export type Fetched<T> =
  | { kind: "fresh"; value: T }
  | { kind: "kept"; value: T }
  | { kind: "problem"; status: number; text: string }
  | { kind: "no line" };

/** The player's own addresses on the server. */
export interface MineApi {
  /** Asks the server; without a line gives what was kept of the last answer. */
  read<T>(path: string): Promise<Fetched<T>>;
  send<T>(method: "POST" | "PUT" | "DELETE", path: string, body?: unknown): Promise<Fetched<T>>;
  /** A file to be saved: a sheet or an export. */
  file(path: string): Promise<Fetched<Blob>>;
}

const BUSY: { [status: number]: true } = { 429: true, 502: true, 503: true, 504: true };

export function makeMineApi(
  key: string,
  pages: Pages,
  ask: typeof fetch = (...args) => fetch(...args),
): MineApi {
  const call = async (method: string, path: string, body?: unknown): Promise<Response | null> => {
    const headers: { [name: string]: string } = { Authorization: `Bearer ${key}` };
    if (body !== undefined) headers["Content-Type"] = "application/json";
    try {
      return await ask(path, {
        method,
        headers,
        cache: "no-store",
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
    } catch {
      return null;
    }
  };
  return {
    async read<T>(path: string): Promise<Fetched<T>> {
      const response = await call("GET", path);
      if (response?.ok) {
        const text = await response.text();
        await pages.keep(path, text);
        return { kind: "fresh", value: JSON.parse(text) as T };
      }
      if (response !== null && !BUSY[response.status]) return problemOf(response);
      const kept = await pages.find(path);
      if (kept !== null) return { kind: "kept", value: JSON.parse(kept) as T };
      return response === null ? { kind: "no line" } : problemOf(response);
    },
    async send<T>(method: string, path: string, body?: unknown): Promise<Fetched<T>> {
      const response = await call(method, path, body);
      if (response === null) return { kind: "no line" };
      if (!response.ok) return problemOf(response);
      const text = await response.text();
      return { kind: "fresh", value: (text === "" ? null : JSON.parse(text)) as T };
    },
    async file(path) {
      const response = await call("GET", path);
      if (response === null) return { kind: "no line" };
      return response.ok ? { kind: "fresh", value: await response.blob() } : problemOf(response);
    },
  };
}

/** A refusal that will not pass by itself: the same message would be refused again. */
export function isLasting(status: number): boolean {
  return status >= 400 && status < 500 && status !== 401 && status !== 408 && status !== 429;
}

async function problemOf(response: Response): Promise<{ kind: "problem"; status: number; text: string }> {
  const fallback = "The server could not do this. Try again in a minute.";
  try {
    const { problem } = (await response.json()) as { problem?: unknown };
    return {
      kind: "problem",
      status: response.status,
      text: typeof problem === "string" ? problem : fallback,
    };
  } catch {
    return { kind: "problem", status: response.status, text: fallback };
  }
}

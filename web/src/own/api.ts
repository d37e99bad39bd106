import type { FileFault } from "../wire";

/** What came back: the server's word, or why there is none, in a sentence. */
export type Got<T> =
  | { value: T; problem: ""; faults: readonly FileFault[] }
  | { value: null; problem: string; faults: readonly FileFault[] };

const NO_LINE = "The server cannot be reached. What you wrote stays in this window; try again in a moment.";
const FAULT = "The server could not do this. Try again in a minute; what you wrote stays in this window.";

/** Asks the desk's own addresses; the host's cookie goes along. */
export async function ask<T>(method: "GET" | "POST" | "PUT" | "DELETE", path: string, body?: unknown) {
  const headers: { [name: string]: string } = { accept: "application/json" };
  if (method !== "GET") headers["Content-Type"] = "application/json";
  return sent<T>(path, { method, headers, ...(body === undefined ? {} : { body: JSON.stringify(body) }) });
}

/** Sends a file as it is. */
export async function sendFile<T>(path: string, file: Blob, kind: string): Promise<Got<T>> {
  return sent<T>(path, { method: "POST", headers: { "Content-Type": kind }, body: file });
}

async function sent<T>(path: string, request: RequestInit): Promise<Got<T>> {
  try {
    const answer = await fetch(path, { ...request, cache: "no-store" });
    const said: unknown = await answer.json().catch(() => null);
    if (answer.ok && said !== null) return { value: said as T, problem: "", faults: [] };
    return { value: null, problem: problemIn(said), faults: faultsIn(said) };
  } catch {
    return { value: null, problem: NO_LINE, faults: [] };
  }
}

function problemIn(said: unknown): string {
  const problem = said && typeof said === "object" && "problem" in said ? said.problem : null;
  return typeof problem === "string" ? problem : FAULT;
}

/** Where in a file something is wrong, if the server said so. */
function faultsIn(said: unknown): readonly FileFault[] {
  const faults = said && typeof said === "object" && "faults" in said ? said.faults : null;
  return Array.isArray(faults) ? (faults as FileFault[]) : [];
}

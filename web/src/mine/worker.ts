// The page's files on this device, so that it opens without a line. What the player's own addresses answer is
// kept by the page itself; nothing else of the server passes through here.

interface Files {
  /** Changes with any file. */
  version: string;
  /** Addresses that the page needs, its own first. */
  paths: string[];
}

interface Waiting extends Event {
  waitUntil(done: Promise<unknown>): void;
}

interface Asking extends Waiting {
  request: Request;
  respondWith(answer: Promise<Response>): void;
}

interface Worker {
  /** Written above this script by the server. */
  quizroomFiles: Files;
  location: Location;
  clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(name: "install" | "activate", hear: (event: Waiting) => void): void;
  addEventListener(name: "fetch", hear: (event: Asking) => void): void;
}

const worker = self as unknown as Worker;
const { version, paths } = worker.quizroomFiles;
const PREFIX = "quizroom.files.";
const CACHE = PREFIX + version;
const PAGE = "/mine";

worker.addEventListener("install", (event) => event.waitUntil(keepFiles()));
worker.addEventListener("activate", (event) => event.waitUntil(forgetOlderFiles()));
worker.addEventListener("fetch", (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== "GET" || origin !== worker.location.origin) return;
  if (event.request.mode === "navigate" && pathname === PAGE) event.respondWith(freshElseKept(event.request));
  else if (paths.includes(pathname)) event.respondWith(keptElseFresh(event.request));
});

async function keepFiles(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(paths);
  await worker.skipWaiting();
}

async function forgetOlderFiles(): Promise<void> {
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** The page comes from the server while there is one, so that a new release is seen at once. */
async function freshElseKept(request: Request): Promise<Response> {
  try {
    const fresh = await fetch(request);
    if (fresh.ok) return fresh;
  } catch {
    // no line: what is kept
  }
  return keptElseFresh(request);
}

/** Files have their content in their names: what is kept is right. */
async function keptElseFresh(request: Request): Promise<Response> {
  const kept = await caches.match(request, { ignoreSearch: true, cacheName: CACHE });
  return kept ?? fetch(request);
}

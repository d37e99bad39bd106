import type { MineSession } from "./session";

const RETRY_MS = 15_000;

/** Sends what waits as soon as it can: when the line comes back, when the page is looked at again, and now and
 * then while anything waits. */
export function sendWhenPossible(session: MineSession): void {
  const attempt = () => {
    if (session.waiting.get() > 0) void session.sendWaiting();
    else if (session.line.get() === "lost") void session.refresh();
  };
  window.addEventListener("online", attempt);
  window.addEventListener("offline", () => session.line.set("lost"));
  document.addEventListener("visibilitychange", () => {
    if (!document.hidden) attempt();
  });
  window.setInterval(attempt, RETRY_MS);
}

/** Keeps the page itself on this device. Browsers allow it on https and on this machine only. */
export function keepPageOnDevice(): void {
  if (!("serviceWorker" in navigator)) return;
  navigator.serviceWorker.register("/mine/worker.js", { scope: "/mine" }).catch(() => {
    // without it the page still works for as long as it stays open
  });
}

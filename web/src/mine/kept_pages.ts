/** What the server last said at an address, for the time without a line. */
export interface Pages {
  keep(path: string, text: string): Promise<void>;
  find(path: string): Promise<string | null>;
}

export const KEPT = "quizroom.mine";

/** Kept in the browser's cache under the player, whom an address alone does not tell. Plain http has no such
 * cache: there the page works without a line for as long as it stays open. */
export function keptPages(player: string): Pages {
  if (!("caches" in globalThis)) return { keep: async () => {}, find: async () => null };
  const address = (path: string) =>
    `${path}${path.includes("?") ? "&" : "?"}of=${encodeURIComponent(player)}`;
  return {
    async keep(path, text) {
      try {
        const cache = await caches.open(KEPT);
        await cache.put(address(path), new Response(text));
      } catch {
        // a full disk must not stop anybody from answering
      }
    },
    async find(path) {
      try {
        const found = await caches.match(address(path), { cacheName: KEPT });
        return found ? await found.text() : null;
      } catch {
        return null;
      }
    },
  };
}

/** Throws away everything kept on this device, when a player leaves or deletes everything. */
export async function forgetKeptPages(): Promise<void> {
  if ("caches" in globalThis) await caches.delete(KEPT);
}

import type { Line } from "../line/line";
import { makeStore, type Store } from "../line/store";
import type { Reply, ReviewLine } from "../wire";

/** The reviews that the desk knows of. */
export interface KnownReviews {
  /** Of many the newest, and what was fetched of the older ones. */
  reviews: Store<readonly ReviewLine[]>;
  /** How many there are in all. */
  reviewsInAll: Store<number>;
  /** Takes the newest from a reply, if it holds any. */
  hear(reply: Reply): void;
  fetchOlder(line: Line): Promise<void>;
}

export function knownReviews(): KnownReviews {
  const reviews = makeStore<readonly ReviewLine[]>([]);
  const reviewsInAll = makeStore(0);
  return {
    reviews,
    reviewsInAll,
    hear(reply) {
      if (!reply.reviews) return;
      reviews.set(reply.reviews);
      reviewsInAll.set(reply.reviews_in_all ?? reply.reviews.length);
    },
    async fetchOlder(line) {
      const known = reviews.get();
      const reply = await line.say({ type: "list_reviews", skip: known.length });
      if (!reply.reviews) return;
      const rooms = new Set(known.map((one) => one.room));
      const older = reply.reviews.filter((one) => !rooms.has(one.room));
      reviews.set([...known, ...older]);
      // Where nothing came there is nothing older, whatever was counted before.
      reviewsInAll.set(older.length === 0 ? known.length : (reply.reviews_in_all ?? 0));
    },
  };
}

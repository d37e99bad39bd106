import type { DeskView, OwnView, PublicView, Reply, Tally } from "../wire";

/** Everything that the server has shown this page so far. */
export interface Seen {
  public: PublicView | null;
  own: OwnView | null;
  desk: DeskView | null;
  tally: Tally | null;
}

export const NOTHING_SEEN: Seen = { public: null, own: null, desk: null, tally: null };

/** Takes a public view in unless a newer one of the same room is known. */
export function withPublic(seen: Seen, view: PublicView): Seen {
  const known = seen.public;
  if (known && known.door_code === view.door_code && known.version > view.version) return seen;
  return { ...seen, public: view };
}

/** Takes a seat's own view in unless a newer one of the same player is known. */
export function withOwn(seen: Seen, view: OwnView): Seen {
  const known = seen.own;
  if (known && known.player === view.player && known.version > view.version) return seen;
  return { ...seen, own: view };
}

/** Takes a desk view in, with the public view inside it. Where the list of players follows later, the one known stays. */
export function withDesk(seen: Seen, view: DeskView): Seen {
  const known = seen.desk;
  if (known?.room === view.room) {
    const desk = view.roster_later ? { ...view, roster: known.roster } : view;
    return known.version > view.version ? seen : { ...seen, desk, public: view.public };
  }
  return { public: view.public, own: null, desk: view, tally: null };
}

/** Takes counts in; older ones than those known change nothing. */
export function withTally(seen: Seen, tally: Tally): Seen {
  return (seen.tally?.version ?? -1) > tally.version ? seen : { ...seen, tally };
}

/** Whether the counts speak of a phase or a round that this page has not been shown. */
export function missedSomething(seen: Seen, tally: Tally): boolean {
  const known = seen.public;
  if (known === null || tally.version < known.version) return false;
  return known.phase !== tally.phase || known.round !== tally.round;
}

/** Takes in whatever views a reply carries. */
export function withReply(seen: Seen, reply: Reply): Seen {
  let next = seen;
  if (reply.public) next = withPublic(next, reply.public);
  if (reply.own) next = withOwn(next, reply.own);
  if (reply.desk) next = withDesk(next, reply.desk);
  return next;
}

/** Players and answers counted, from the tally when it is newer than the view; answers are null where the desk alone
 * may know. */
export function counts(seen: Seen): { players: number; answered: number | null } {
  const view = seen.public;
  if (view === null) return { players: 0, answered: 0 };
  const fresh = seen.tally !== null && seen.tally.version >= view.version ? seen.tally : view;
  return { players: fresh.players, answered: fresh.answered };
}

import type { Line } from "../line/line";
import type { Shelf } from "../line/outbox";
import { mustRepeat } from "../line/persist";
import type { Store } from "../line/store";

const AFTER_HASH = /^#time=([0-9a-f]{32})$/;

/** The address of a private link. What follows the # never reaches a server, its log, or a proxy. */
export function timeLink(base: string, doorCode: string, secret: string): string {
  return `${base}/seat/${doorCode}#time=${secret}`;
}

/** Keeps what a private link holds until the seat is taken, and takes it out of the address, where others may read it. */
export function keepTimeSecret(shelf: Shelf, doorCode: string): void {
  const found = AFTER_HASH.exec(location.hash);
  if (found?.[1] === undefined) return;
  shelf.setItem(nameOf(doorCode), found[1]);
  history.replaceState(null, "", location.pathname);
}

/** Hands the secret in from the seat; a refusal is told to this player alone, and the seat is kept. */
export async function bringTime(
  line: Line,
  shelf: Shelf,
  doorCode: string,
  privately: Store<string>,
): Promise<void> {
  const secret = shelf.getItem(nameOf(doorCode));
  if (secret === null) return;
  const reply = await line.say({ type: "bring_time", secret });
  if (mustRepeat(reply)) return; // it waits on the shelf for the next return to the seat
  shelf.removeItem(nameOf(doorCode));
  privately.set(reply.result === "refused" ? (reply.text ?? "") : "");
}

function nameOf(doorCode: string): string {
  return `quizroom.time.${doorCode}`;
}

import { type Line, openLine } from "../line/line";
import { ENTER_AT_ONCE, lastingShelf, makeSeatMemory, type SeatMemory, tidyDoorCode } from "../line/memory";
import { makeOutbox, type Shelf } from "../line/outbox";
import { keyForSeat } from "../line/own_key";
import { mustRepeat } from "../line/persist";
import { makeStore, type Store } from "../line/store";
import type { Reply, SubmitAnswer } from "../wire";
import { type HandIn, makeHandIn } from "./hand_in";
import { bringTime, keepTimeSecret } from "./time_link";

/** "outside": the form is shown; "entering": waiting for the door; "seated": the review is shown. */
export type Place = "outside" | "entering" | "seated";

/** One player's way into a room and back to the seat. */
export interface SeatSession {
  line: Line;
  place: Store<Place>;
  /** Why the door stayed shut, in the server's words. */
  complaint: Store<string>;
  /** Why a private link brought nothing, in the server's words; the seat is kept. */
  privately: Store<string>;
  hands: Store<HandIn | null>;
  doorCode: Store<string>;
  rememberedHandle: string;
  enter(doorCode: string, handle: string): Promise<void>;
}

/** What the steps of the way share. `handle` is set while its owner wants to come in. */
interface Way {
  place: Store<Place>;
  complaint: Store<string>;
  privately: Store<string>;
  hands: Store<HandIn | null>;
  doorCode: Store<string>;
  handle: string;
  memory: SeatMemory;
  shelf: Shelf;
  received: (answer: SubmitAnswer) => void;
}

const RETRY_MS = 2000;

export function startSession(doorCode: string, received: (answer: SubmitAnswer) => void): SeatSession {
  const shelf = lastingShelf();
  const memory = makeSeatMemory(shelf);
  const way: Way = {
    place: makeStore<Place>("entering"),
    complaint: makeStore(""),
    privately: makeStore(""),
    hands: makeStore<HandIn | null>(null),
    doorCode: makeStore(doorCode),
    handle: handleFromFrontPage(doorCode, memory),
    memory,
    shelf,
    received,
  };
  keepTimeSecret(shelf, doorCode);
  // a link opened over a page that is here already changes no more than what follows the #
  window.addEventListener("hashchange", () => {
    keepTimeSecret(shelf, way.doorCode.get());
    if (way.place.get() === "seated") void bringTime(line, shelf, way.doorCode.get(), way.privately);
  });
  const line = openLine((opened) => takePlace(way, opened));
  return {
    line,
    place: way.place,
    complaint: way.complaint,
    privately: way.privately,
    hands: way.hands,
    doorCode: way.doorCode,
    rememberedHandle: memory.handle(),
    enter(code, handle) {
      way.handle = handle;
      memory.keepHandle(handle);
      way.doorCode.set(tidyDoorCode(code));
      way.place.set("entering");
      return enterSeat(way, line);
    },
  };
}

/** After every connection: back to the seat whose key is here, else in with the handle, else to the form. */
async function takePlace(way: Way, line: Line): Promise<void> {
  const code = way.doorCode.get();
  const key = way.memory.keyFor(code);
  if (key === null && way.handle === "") return way.place.set("outside");
  if (key === null) return enterSeat(way, line);
  const reply = await line.say({ type: "resume_seat", door_code: code, seat_key: key });
  if (reply.code === "unknown_seat") {
    way.memory.forget(code);
    if (way.handle !== "") return enterSeat(way, line);
  }
  return settle(way, line, reply, () => takePlace(way, line));
}

async function enterSeat(way: Way, line: Line): Promise<void> {
  const code = way.doorCode.get();
  const key = way.memory.keyFor(code) ?? way.memory.makeKey(code);
  const reply = await line.say({
    type: "enter_seat",
    door_code: code,
    handle: way.handle,
    seat_key: key,
    player_key: keyForSeat(way.shelf),
  });
  if (reply.result === "refused" && !mustRepeat(reply)) way.memory.forget(code);
  return settle(way, line, reply, () => enterSeat(way, line));
}

async function settle(way: Way, line: Line, reply: Reply, again: () => Promise<void>): Promise<void> {
  if (mustRepeat(reply)) {
    way.complaint.set(reply.code === "no_reply" ? "" : (reply.text ?? ""));
    if (line.state.get() === "open") window.setTimeout(() => void again(), RETRY_MS);
    return;
  }
  way.handle = "";
  way.complaint.set(reply.result === "refused" ? (reply.text ?? "") : "");
  if (reply.result === "refused") return way.place.set("outside");
  await sitDown(way, line);
}

async function sitDown(way: Way, line: Line): Promise<void> {
  const code = way.doorCode.get();
  if (way.hands.get() === null) {
    way.hands.set(makeHandIn(line, makeOutbox(way.shelf, `quizroom.outbox.${code}`), way.received));
  }
  keepTimeSecret(way.shelf, code);
  history.replaceState(null, "", `/seat/${code}`);
  way.place.set("seated");
  await bringTime(line, way.shelf, code, way.privately);
  await way.hands.get()?.sendWaiting();
}

function handleFromFrontPage(doorCode: string, memory: SeatMemory): string {
  try {
    const asked = sessionStorage.getItem(ENTER_AT_ONCE) === doorCode;
    sessionStorage.removeItem(ENTER_AT_ONCE);
    return asked ? memory.handle() : "";
  } catch {
    return "";
  }
}

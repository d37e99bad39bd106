import { type Line, openLine } from "../line/line";
import { ENTER_AT_ONCE, lastingShelf, makeSeatMemory, type SeatMemory, tidyDoorCode } from "../line/memory";
import { makeOutbox, type Shelf } from "../line/outbox";
import { makeStore, type Store } from "../line/store";
import type { Reply, SubmitAnswer } from "../wire";
import { type HandIn, makeHandIn, mustRepeat } from "./hand_in";

/** "outside": the form is shown; "entering": waiting for the door; "seated": the review is shown. */
export type Place = "outside" | "entering" | "seated";

/** One player's way into a room and back to the seat. */
export interface SeatSession {
  line: Line;
  place: Store<Place>;
  /** Why the door stayed shut, in the server's words. */
  complaint: Store<string>;
  hands: Store<HandIn | null>;
  doorCode: Store<string>;
  rememberedHandle: string;
  enter(doorCode: string, handle: string): Promise<void>;
}

const RETRY_MS = 2000;

export function startSession(doorCode: string, received: (answer: SubmitAnswer) => void): SeatSession {
  const shelf = lastingShelf();
  const memory = makeSeatMemory(shelf);
  const place = makeStore<Place>("entering");
  const complaint = makeStore("");
  const hands = makeStore<HandIn | null>(null);
  const door = makeStore(doorCode);
  let handle = handleFromFrontPage(doorCode, memory);

  async function takePlace(line: Line): Promise<void> {
    const code = door.get();
    const key = memory.keyFor(code);
    if (key === null && handle === "") return place.set("outside");
    if (key === null) return enterSeat(line, code);
    const reply = await line.say({ type: "resume_seat", door_code: code, seat_key: key });
    if (reply.code === "unknown_seat" && handle !== "") return enterSeat(line, code);
    return settle(line, code, reply, () => takePlace(line));
  }

  async function enterSeat(line: Line, code: string): Promise<void> {
    const key = memory.keyFor(code) ?? memory.makeKey(code);
    const reply = await line.say({ type: "enter_seat", door_code: code, handle, seat_key: key });
    return settle(line, code, reply, () => enterSeat(line, code));
  }

  async function settle(line: Line, code: string, reply: Reply, again: () => Promise<void>): Promise<void> {
    if (mustRepeat(reply)) {
      complaint.set(reply.code === "no_reply" ? "" : (reply.text ?? ""));
      if (line.state.get() === "open") window.setTimeout(() => void again(), RETRY_MS);
      return;
    }
    handle = "";
    complaint.set(reply.result === "refused" ? (reply.text ?? "") : "");
    if (reply.result === "refused") {
      memory.forget(code);
      return place.set("outside");
    }
    await sitDown(line, code, shelf);
  }

  async function sitDown(line: Line, code: string, on: Shelf): Promise<void> {
    if (hands.get() === null)
      hands.set(makeHandIn(line, makeOutbox(on, `quizroom.outbox.${code}`), received));
    history.replaceState(null, "", `/seat/${code}`);
    place.set("seated");
    await hands.get()?.sendWaiting();
  }

  const line = openLine(takePlace);
  return {
    line,
    place,
    complaint,
    hands,
    doorCode: door,
    rememberedHandle: memory.handle(),
    enter(code, name) {
      handle = name;
      memory.keepHandle(name);
      door.set(tidyDoorCode(code));
      place.set("entering");
      return enterSeat(line, door.get());
    },
  };
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

import { type Line, openLine } from "../line/line";
import { lastingShelf, makeSeatMemory, newSeatKey, type SeatMemory } from "../line/memory";
import { keyForSeat } from "../line/own_key";
import { sayUntilAnswered } from "../line/persist";
import { makeStore, type Store } from "../line/store";
import type { GroupSettings } from "../wire";
import { type Choices, orderOf } from "./choices";

/** The way from the form to a seat in a room of one's own. */
export interface Opening {
  line: Line;
  settings: Store<GroupSettings | null>;
  complaint: Store<string>;
  busy: Store<boolean>;
  handle: string;
  open(choices: Choices): Promise<void>;
}

const NO_SETTINGS = "The course lists could not be read. Reload this page.";

export function startOpening(): Opening {
  const memory = makeSeatMemory(lastingShelf());
  const settings = makeStore<GroupSettings | null>(null);
  const complaint = makeStore("");
  const busy = makeStore(false);
  const line = openLine(() => undefined);
  void readSettings(settings, complaint);
  return {
    line,
    settings,
    complaint,
    busy,
    handle: memory.handle(),
    async open(choices) {
      if (busy.get()) return;
      busy.set(true);
      complaint.set(await opened(line, memory, choices));
      busy.set(false);
    },
  };
}

/** Opens the room and goes to its seat; the server's sentence if it could not be done. */
async function opened(line: Line, memory: SeatMemory, choices: Choices): Promise<string> {
  const key = newSeatKey();
  memory.keepHandle(choices.handle.trim());
  const reply = await sayUntilAnswered(line, orderOf(choices, key, keyForSeat()));
  const doorCode = reply.public?.door_code;
  if (reply.result !== "done" || !doorCode) return reply.text || "The room could not be opened. Try again.";
  memory.keepKey(doorCode, key);
  location.assign(`/seat/${doorCode}`);
  return "";
}

async function readSettings(settings: Store<GroupSettings | null>, complaint: Store<string>): Promise<void> {
  try {
    const answer = await fetch("/group/settings", { headers: { accept: "application/json" } });
    if (!answer.ok) throw new Error(answer.statusText);
    settings.set((await answer.json()) as GroupSettings);
  } catch {
    complaint.set(NO_SETTINGS);
  }
}

import { complaintOf } from "../line/complaint";
import { type Draft, type Line, openLine } from "../line/line";
import { makeStore, type Store } from "../line/store";
import type { DeskSettings, PrepareReview, ReviewLine } from "../wire";
import { knownReviews } from "./known_reviews";

/** The host's page: what it starts with, and the way to a review. */
export interface DeskSession {
  line: Line;
  settings: Store<DeskSettings | null>;
  /** Of many the newest, and what was fetched of the older ones. */
  reviews: Store<readonly ReviewLine[]>;
  /** How many there are in all. */
  reviewsInAll: Store<number>;
  fetchOlder(): Promise<void>;
  complaint: Store<string>;
  prepare(plan: Omit<PrepareReview, "id">): Promise<boolean>;
  open(room: string): Promise<boolean>;
  /** Carries out an order about a review in the list; what keeps it from being carried out, or nothing. */
  change(draft: Draft): Promise<string>;
}

const NO_SETTINGS =
  "The course lists could not be read. Reload this page, or look at what the server prints.";

export function startDesk(): DeskSession {
  const settings = makeStore<DeskSettings | null>(null);
  const { reviews, reviewsInAll, hear, fetchOlder } = knownReviews();
  const complaint = makeStore("");
  const line = openLine(takePlace);
  void readSettings(settings, complaint);

  /** After a break the desk goes on with the review that the address names. */
  async function takePlace(opened: Line): Promise<void> {
    const room = roomInAddress();
    if (room !== "" && (await open(room))) return;
    const reply = await opened.say({ type: "list_reviews" });
    hear(reply);
    if (reply.result !== "done") complaint.set(reply.text ?? "");
  }

  async function open(room: string): Promise<boolean> {
    const reply = await line.say({ type: "open_desk", room });
    return arrived(reply.result === "done", reply.text ?? "", room);
  }

  function arrived(done: boolean, text: string, room: string): boolean {
    complaint.set(done ? "" : text);
    if (done) history.replaceState(null, "", `#${encodeURIComponent(room)}`);
    return done;
  }

  return {
    line,
    settings,
    reviews,
    reviewsInAll,
    fetchOlder: () => fetchOlder(line),
    complaint,
    open,
    async change(draft) {
      const reply = await line.say(draft);
      hear(reply);
      return complaintOf(reply);
    },
    async prepare(plan) {
      const reply = await line.say(plan);
      return arrived(reply.result === "done", reply.text ?? "", reply.desk?.room ?? "");
    },
  };
}

function roomInAddress(): string {
  return decodeURIComponent(location.hash.slice(1));
}

async function readSettings(settings: Store<DeskSettings | null>, complaint: Store<string>): Promise<void> {
  try {
    const answer = await fetch("/desk/settings", { headers: { accept: "application/json" } });
    if (!answer.ok) throw new Error(answer.statusText);
    settings.set((await answer.json()) as DeskSettings);
  } catch {
    complaint.set(NO_SETTINGS);
  }
}

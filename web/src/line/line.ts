import { io, type Socket } from "socket.io-client";
import type { ClientMessage, DeskView, OwnView, PublicView, Reply, Tally } from "../wire";
import { tidyDoorCode } from "./memory";
import { newMessageId } from "./random";
import {
  missedSomething,
  NOTHING_SEEN,
  type Seen,
  withDesk,
  withOwn,
  withPublic,
  withReply,
  withTally,
} from "./seen";
import { makeServerClock, PROBES_AT_JOIN, type Probe, type ServerClock } from "./server_clock";
import { makeStore, type Store } from "./store";

/** "connecting" until the first success, "lost" after a break; the line mends itself. */
export type LineState = "connecting" | "open" | "lost";

type WithoutId<M> = M extends ClientMessage ? Omit<M, "id"> : never;
/** A message before it has got its id. */
export type Draft = WithoutId<ClientMessage>;

/** The page's line to the server. */
export interface Line {
  state: Store<LineState>;
  seen: Store<Seen>;
  clock: ServerClock;
  /** Sends a message and takes in what the reply shows; never throws. */
  say(draft: Draft): Promise<Reply>;
  /** The same for a message that already has its id (a repeat). */
  sayAgain(message: ClientMessage): Promise<Reply>;
}

const ANSWER_WAIT_MS = 8000;
const NO_REPLY = "The server does not answer. This page keeps trying.";

/** Opens the line; `onOpen` is called at every connection, also after each break, to take one's place again. */
export function openLine(onOpen: (line: Line) => Promise<void> | void): Line {
  const socket = io({
    query: roomInQuery(document.getElementById("page")?.dataset.doorCode ?? ""),
    transports: ["websocket", "polling"],
    tryAllTransports: true,
    reconnectionDelayMax: 2000, // with half of it by chance on top: 3 s, which the server gives back after an outage
  });
  const line = makeLine(socket);
  socket.on("connect", async () => {
    line.state.set("open");
    await onOpen(line);
    await probeTime(line);
  });
  socket.on("disconnect", (reason) => {
    line.state.set("lost");
    if (reason === "io server disconnect") socket.connect(); // the client does not mend this kind by itself
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible") return;
    if (socket.connected) void probeTime(line);
    else socket.connect(); // a phone that wakes up should not wait for the next try
  });
  return line;
}

/** A proxy before several workers may send all lines of a room to one of them: for speed, and for long polling. */
export function roomInQuery(doorCode: string): { room?: string } {
  const room = tidyDoorCode(doorCode);
  return room === "" ? {} : { room };
}

function makeLine(socket: Socket): Line {
  const seen = makeStore<Seen>(NOTHING_SEEN);
  const clock = makeServerClock(() => performance.now());
  const sayAgain = async (message: ClientMessage) => {
    const reply = await ask(socket, message);
    // A refusal may carry views too: what was tried in vain is in them.
    seen.set(withReply(seen.get(), reply));
    if (reply.now > 0) clock.guess(reply.now);
    return reply;
  };
  socket.on("public", (view: PublicView) => seen.set(withPublic(seen.get(), view)));
  socket.on("own", (view: OwnView) => seen.set(withOwn(seen.get(), view)));
  socket.on("desk", (view: DeskView) => seen.set(withDesk(seen.get(), view)));
  const say = (draft: Draft) => sayAgain({ ...draft, id: newMessageId() } as ClientMessage);
  socket.on("tally", (tally: Tally) => {
    const missed = missedSomething(seen.get(), tally);
    seen.set(withTally(seen.get(), tally));
    if (missed) void say({ type: "show_view" });
  });
  return { state: makeStore<LineState>("connecting"), seen, clock, sayAgain, say };
}

async function ask(socket: Socket, message: ClientMessage): Promise<Reply> {
  if (!socket.connected) return noReply(message.id);
  try {
    return (await socket.timeout(ANSWER_WAIT_MS).emitWithAck("say", message)) as Reply;
  } catch {
    return noReply(message.id);
  }
}

/** The reply that stands for none: code "no_reply", to be sent again. */
function noReply(id: string): Reply {
  const none = { public: null, own: null, desk: null, reviews: null, answer_round: null };
  return { id, result: "failed", now: 0, code: "no_reply", text: NO_REPLY, ...none };
}

async function probeTime(line: Line): Promise<void> {
  const probes: Probe[] = [];
  for (let n = 0; n < PROBES_AT_JOIN; n += 1) {
    const sent = performance.now();
    const reply = await line.say({ type: "probe_time" });
    if (reply.code === "no_reply") break;
    probes.push({ sent, server: reply.now, received: performance.now() });
  }
  line.clock.learn(probes);
}

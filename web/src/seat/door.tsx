import { useEffect } from "preact/hooks";
import { useStore } from "../line/store";
import type { Announcer } from "../parts/announcer";
import { LineNotice } from "../parts/notice";
import { JoinForm } from "./join_form";
import type { Place, SeatSession } from "./session";

/** The way in: the form, or word that the seat is being looked for. */
export function Door({
  session,
  place,
  announcer,
}: {
  session: SeatSession;
  place: Place;
  announcer: Announcer;
}) {
  const state = useStore(session.line.state);
  const complaint = useStore(session.complaint);
  const doorCode = useStore(session.doorCode);
  useEffect(() => {
    if (complaint) announcer.say(complaint);
  }, [announcer, complaint]);
  const waiting = place === "entering" && complaint === "";
  return (
    <main class="door">
      <h1 class="door_title">{waiting ? "Looking for your seat …" : "Take a seat"}</h1>
      <LineNotice state={state} kept="" />
      {waiting ? (
        <p class="door_text">{state === "open" ? "One moment." : "Connecting to the server …"}</p>
      ) : (
        <JoinForm
          key={doorCode}
          doorCode={doorCode}
          handle={session.rememberedHandle}
          complaint={complaint}
          busy={place === "entering"}
          onEnter={(code, handle) => void session.enter(code, handle)}
        />
      )}
    </main>
  );
}

import "./desk.css";
import { useStore } from "../line/store";
import { type Announcer, LiveRegion } from "../parts/announcer";
import { Console } from "./console";
import type { DeskSession } from "./session";
import { Start } from "./start";

/** The host's private page. */
export function DeskPage({ session, announcer }: { session: DeskSession; announcer: Announcer }) {
  const seen = useStore(session.line.seen);
  const settings = useStore(session.settings);
  return (
    <>
      {seen.desk ? (
        <Console session={session} view={seen.desk} settings={settings} announcer={announcer} />
      ) : (
        <Start session={session} />
      )}
      <LiveRegion announcer={announcer} />
    </>
  );
}

import "./desk.css";
import { useStore } from "../line/store";
import { type Announcer, LiveRegion } from "../parts/announcer";
import { Console } from "./console";
import { Owning } from "./owning";
import type { DeskSession } from "./session";
import { Start } from "./start";

/** The host's private page. */
export function DeskPage({ session, announcer }: { session: DeskSession; announcer: Announcer }) {
  const seen = useStore(session.line.seen);
  const settings = useStore(session.settings);
  return (
    <Owning.Provider value={settings?.host?.role !== "assistant"}>
      {seen.desk ? (
        <Console session={session} view={seen.desk} settings={settings} announcer={announcer} />
      ) : (
        <Start session={session} />
      )}
      <LiveRegion announcer={announcer} />
    </Owning.Provider>
  );
}

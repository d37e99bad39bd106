import { useState } from "preact/hooks";
import { type FlagAtSeat, FlagButton, FlagWords } from "../seat/flag";
import type { Look, LookFlag, LookFlagged } from "../wire";
import type { MineSession } from "./session";

interface LookFlagProps {
  look: Look;
  flag: LookFlag;
  session: MineSession;
  say: (text: string) => void;
}

const NO_LINE = "You are off line. Flag it when you are back.";
// What was told to the server since the page was loaded: looks that are read again hold the state of then.
const KEPT: { [look: string]: { up: boolean; text: string } } = {};

/** One tap flags the item of a look for the host of the review that asked it. */
export function LookFlagPart(props: LookFlagProps) {
  const flag = useLookFlag(props);
  const note = `Flagged at round ${props.flag.round} of “${props.flag.review}”: its host sees that somebody did, not who.`;
  return (
    <div class="look_flag">
      <FlagButton flag={flag} />
      {flag.open && <FlagWords flag={flag} note={note} />}
    </div>
  );
}

function useLookFlag({ look, flag, session, say }: LookFlagProps): FlagAtSeat {
  const [now, setNow] = useState(KEPT[look.id] ?? { up: flag.up, text: flag.text });
  const [open, setOpen] = useState(false);
  const [complaint, setComplaint] = useState("");
  const order = async (up: boolean, text: string, staysOpen: boolean) => {
    const wish = { look: look.id, up, text };
    const reply = await session.api.send<LookFlagged>("POST", "/mine/api/flags", wish);
    const fault = reply.kind === "fresh" ? "" : reply.kind === "problem" ? reply.text : NO_LINE;
    if (fault === "") {
      KEPT[look.id] = { up, text };
      setNow({ up, text });
    }
    setComplaint(fault);
    setOpen(staysOpen || fault !== "");
    say(fault || (up ? "Flagged for the host of that review." : "The flag is taken back."));
  };
  return {
    ...now,
    open,
    complaint,
    tap: () => (now.up ? setOpen(!open) : void order(true, "", true)),
    write: (text) => void order(true, text, false),
    takeBack: () => void order(false, "", false),
  };
}

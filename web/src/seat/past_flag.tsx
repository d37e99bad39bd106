import "./flag.css";
import type { Line } from "../line/line";
import type { OwnView } from "../wire";
import { FlagButton, FlagWords, useFlagOf } from "./flag";

/** The flag of a round that is over, to be put up, worded or taken back at the end of the review. */
export function PastFlag(props: { round: number; own: OwnView; line: Line; say: (text: string) => void }) {
  const flag = useFlagOf(props);
  return (
    <div class="past_flag">
      <FlagButton flag={flag} about={`round ${props.round}`} />
      {flag.open && <FlagWords flag={flag} />}
    </div>
  );
}

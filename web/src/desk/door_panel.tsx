import { bareAddress } from "../line/page";
import type { DeskView } from "../wire";

/** Door code and the ways in; the wall's address is the one that phones can reach. */
export function DoorPanel({ view, joinAddress }: { view: DeskView; joinAddress: string }) {
  const code = view.public.door_code;
  if (code === "") return <p class="console_door">The door is shut.</p>;
  const base = joinAddress.replace(/\/+$/, "");
  return (
    <p class="console_door">
      <span class="console_code">{code}</span>
      <a href={`${base}/wall/${code}`} target="_blank" rel="noopener">
        Wall
      </a>
      <a href={`${base}/seat/${code}`} target="_blank" rel="noopener">
        {bareAddress(base)}
      </a>
    </p>
  );
}

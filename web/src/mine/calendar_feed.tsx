import { useEffect, useState } from "preact/hooks";
import { Complaint } from "../parts/notice";
import type { MineSession } from "./session";
import { refusalOf } from "./take_away";

/** Whether there is a feed, at what time of day its entries stand, and its address when it has just been made. */
interface Feed {
  on: boolean;
  at?: string;
  address?: string;
}

const ADDRESS = "/mine/api/calendar";

/** The return plan as a feed for a calendar program: made, made anew, made void. */
export function CalendarFeed({ session, say }: { session: MineSession; say: (text: string) => void }) {
  const [feed, setFeed] = useState<Feed>({ on: false });
  const [at, setAt] = useState("");
  const [complaint, setComplaint] = useState("");
  const take = (next: Feed) => {
    setFeed(next);
    if (next.at) setAt(next.at);
  };
  useEffect(() => {
    void session.read<Feed>(ADDRESS).then((got) => {
      if (got.kind === "fresh" || got.kind === "kept") take(got.value);
    });
  }, [session]);
  const ask = async (method: "POST" | "DELETE", done: string) => {
    const reply = await session.api.send<Feed>(method, ADDRESS, method === "POST" && at ? { at } : undefined);
    setComplaint(refusalOf(reply));
    say(refusalOf(reply) || done);
    if (reply.kind === "fresh") take(reply.value);
  };
  return (
    <div class="feed">
      <p>The plan in your calendar: a secret address without marks or names, which you can make void.</p>
      <label class="field feed_time">
        <span class="field_label">Time of day</span>
        <input
          class="field_input"
          type="time"
          value={at}
          onInput={(event) => setAt(event.currentTarget.value)}
        />
      </label>
      <FeedButtons on={feed.on} onAsk={(method, done) => void ask(method, done)} />
      {feed.address && <FeedAddress address={feed.address} />}
      <Complaint text={complaint} />
    </div>
  );
}

function FeedButtons(props: { on: boolean; onAsk: (method: "POST" | "DELETE", done: string) => void }) {
  const { on, onAsk } = props;
  return (
    <p class="today_act">
      <button class="button" type="button" onClick={() => onAsk("POST", "The calendar's address is made.")}>
        {on ? "Make a new address" : "Make the address"}
      </button>
      {on && (
        <button
          class="button"
          type="button"
          onClick={() => onAsk("DELETE", "The calendar's address is void.")}
        >
          Make it void
        </button>
      )}
    </p>
  );
}

function FeedAddress({ address }: { address: string }) {
  return (
    <label class="field">
      <span class="field_label">Address for your calendar program; it is shown only this once</span>
      <input class="field_input" readOnly value={address} onFocus={(event) => event.currentTarget.select()} />
    </label>
  );
}

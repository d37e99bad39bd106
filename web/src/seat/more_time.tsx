import "./more_time.css";
import "../parts/buttons.css";
import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Line } from "../line/line";
import type { Announcer } from "../parts/announcer";
import { useLeft } from "../parts/left";
import { Complaint } from "../parts/notice";
import type { OwnView, PublicView } from "../wire";
import { secondsWords } from "../words/numbers";
import { type Handed, isHandedIn } from "./hand_in";
import { isOfferedAgain, OFFERED_AGAIN_MS, type ToTake, takeAlways, takeTime, toTake } from "./taking_time";

interface MoreTimeProps {
  /** The view as it was told to all. */
  view: PublicView;
  own: OwnView | null;
  line: Line;
  announcer: Announcer;
  /** What is left on this player's own clock, ms. */
  left: number | null;
  /** What was handed in last: whoever has answered is not offered more time aloud. */
  handed: Handed | null;
  /** What is asked: in it, the key + takes more time. */
  children: ComponentChildren;
}

/** More time that the player takes by one tap or key: above what is asked, always in the same place. */
export function WithMoreTime(props: MoreTimeProps) {
  const { view, own, line, announcer, left } = props;
  const wish = toTake(view, own);
  const lateMs = useLeft(wish?.late ?? null, line.clock);
  const [fault, setFault] = useState("");
  const busy = useRef(false);
  useEffect(() => setFault(""), [view.round, view.phase]);
  const isOver = wish !== null && wish.late !== null && (left === null || left <= 0);
  const answered = wish !== null && (isHandedIn(props.handed, wish) || hasAnswered(wish, own));
  // whoever has answered in time is left in peace once the round is closed
  const open = isOver ? (lateMs ?? 0) > 0 && !answered : true;
  const offered = wish !== null && wish.taken < wish.most && open;
  useOffer(announcer, offered && !answered, left);
  const lateOffer = offered && isOver ? `Round ${wish.round} is closed. Not done? Press plus.` : "";
  useEffect(() => {
    if (lateOffer) announcer.say(lateOffer);
  }, [announcer, lateOffer]);
  const take = async () => {
    if (!offered || busy.current) return;
    busy.current = true;
    const refusal = await takeTime(line, wish);
    busy.current = false;
    setFault(refusal);
    if (refusal) announcer.say(refusal);
  };
  const byKey = (event: KeyboardEvent) => {
    if (event.key !== "+" || event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
    if (event.target instanceof HTMLInputElement && event.target.type === "text") return;
    if (event.target instanceof HTMLTextAreaElement || !offered) return;
    event.preventDefault();
    void take();
  };
  const soon = offered && !answered && left !== null && left > 0 && left <= OFFERED_AGAIN_MS;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the key works beside the button, as letters do for options
    <div class="more_time_around" onKeyDown={byKey}>
      {offered && <TimeRow wish={wish} isSoon={soon} isOver={isOver} onTake={() => void take()} />}
      <Complaint text={fault} />
      {props.children}
    </div>
  );
}

/** Whether the server's own view has an answer to what is asked. */
function hasAnswered({ round, again }: ToTake, own: OwnView | null): boolean {
  return (again ? own?.second : own?.answer)?.round === round;
}

/** The button, and beside it how one stands. */
function TimeRow(props: { wish: ToTake; isSoon: boolean; isOver: boolean; onTake: () => void }) {
  return (
    <div class={`more_time${props.isSoon ? " more_time-soon" : ""}`}>
      <button class="button more_time_button" type="button" aria-keyshortcuts="+" onClick={props.onTake}>
        More time
        <kbd class="more_time_key">+</kbd>
      </button>
      <p class="more_time_text">
        {props.isSoon
          ? `${secondsWords(OFFERED_AGAIN_MS)} or less left.`
          : takenText(props.wish, props.isOver)}
      </p>
    </div>
  );
}

function takenText({ taken, always }: ToTake, isOver: boolean): string {
  if (isOver) return "Not done? You may still take it.";
  if (taken === 0 && always) return "You have more time in every round.";
  if (taken === 0) return "Only your host can see it.";
  return `Taken ${taken === 1 ? "once" : `${taken} times`}. Only your host can see it.`;
}

/** The seat's choice for the whole review, so that nothing has to be pressed while a clock runs. */
export function AlwaysMoreTime({
  view,
  own,
  line,
  announcer,
}: Omit<MoreTimeProps, "left" | "handed" | "children">) {
  const [fault, setFault] = useState("");
  const [wish, keep] = useState<boolean | null>(null);
  const mine = own?.time_to_take;
  if (!mine || !(view.offers_time || mine.always) || view.phase === "finished") return null;
  const choose = async (on: boolean) => {
    keep(on);
    const refusal = await takeAlways(line, on);
    keep(null);
    setFault(refusal);
    announcer.say(refusal || (on ? "You have more time in every round." : "You have as long as everybody."));
  };
  return (
    <section class="always_time" aria-label="More time">
      <label class="always_time_line">
        <input
          type="checkbox"
          checked={wish ?? mine.always}
          onChange={(event) => void choose(event.currentTarget.checked)}
        />
        <span>Always give me more time</span>
      </label>
      <p class="always_time_text">
        Ten times as long in every round of this review. Only your host can see it.
        {mine.always && !view.offers_time && " It counts as soon as your host holds results."}
      </p>
      <Complaint text={fault} />
    </section>
  );
}

/** Says aloud that more time may be taken, early enough to take it. */
function useOffer(announcer: Announcer, offered: boolean, left: number | null): void {
  const before = useRef<number | null>(null);
  useEffect(() => {
    const was = before.current;
    before.current = left;
    if (!offered || was === null || left === null || !isOfferedAgain(was, left)) return;
    announcer.say(`${secondsWords(left)} left. Press plus for more time.`);
  }, [announcer, offered, left]);
}

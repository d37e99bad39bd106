import { useEffect, useRef, useState } from "preact/hooks";
import { lastingDrawer } from "../look_box";
import { callOf, later, readWalk, type Walk } from "./walk";

const TICK_MS = 250;
const drawer = lastingDrawer();

const nameOf = (set: string) => `quizroom.walk.${set}`;

/** The walk of a set, kept on this device at every change, so that a reload goes on where one stood. The clock
 * runs only while the page is looked at: a phone that sleeps loses no station. */
export function useWalk(
  set: string,
  stations: number,
  say: (text: string) => void,
): [Walk | null, (next: Walk) => void] {
  const [walk, setWalk] = useState(() => readWalk(drawer.getItem(nameOf(set)), stations));
  const now = useRef(walk);
  const change = (next: Walk) => {
    if (next === now.current) return;
    const call = now.current === null ? null : callOf(now.current, next);
    now.current = next;
    drawer.setItem(nameOf(set), JSON.stringify(next));
    setWalk(next);
    if (call !== null) say(call);
  };
  const runs = walk !== null && !walk.handedIn && walk.at < walk.order.length;
  useEffect(() => {
    if (!runs) return;
    let before = performance.now();
    const timer = window.setInterval(() => {
      const passed = performance.now() - before;
      before += passed;
      if (now.current !== null && !document.hidden && passed < 4 * TICK_MS)
        change(later(now.current, passed));
    }, TICK_MS);
    return () => window.clearInterval(timer);
  }, [runs]);
  return [walk, change];
}

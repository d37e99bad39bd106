import { useEffect, useState } from "preact/hooks";
import { lastingShelf } from "../line/memory";

const NAME = "quizroom.keys";

/** Whether single keys act on this device; whoever speaks to the computer can switch them off (WCAG 2.1.4). */
export function useKeysOn(): [boolean, (on: boolean) => void] {
  const [on, setOn] = useState(lastingShelf().getItem(NAME) !== "off");
  return [
    on,
    (next) => {
      lastingShelf().setItem(NAME, next ? "on" : "off");
      setOn(next);
    },
  ];
}

/** Lets single keys act while they are on, never while somebody types or holds Ctrl and the like. */
export function useKeys(on: boolean, acts: { [key: string]: () => void }): void {
  useEffect(() => {
    if (!on) return;
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.repeat || isTyping(event.target)) return;
      if (document.querySelector("dialog[open]")) return; // a question is open: it comes first
      const act = acts[event.key.toLowerCase()];
      if (act === undefined) return;
      event.preventDefault();
      act();
    };
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  });
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof Element &&
    target.closest("input:not([type=checkbox], [type=radio]), select, textarea") !== null
  );
}

import { useLayoutEffect, useState } from "preact/hooks";
import { Drawing, type Measured } from "./drawing";
import type { MeasuredStation } from "./geometry";

/** The drawn side of the path.
 *
 * It is measured from the list beside it, so that every leader line ends at its words. The list says
 * all of it in text: screen readers skip the figure. */
export function Figure(props: { list: { current: HTMLElement | null }; heads: number }) {
  const measured = useMeasured(props.list);
  if (measured === null) return <div class="figure" aria-hidden="true" />;
  return <Drawing measured={measured} heads={props.heads} />;
}

function useMeasured(list: { current: HTMLElement | null }): Measured | null {
  const [measured, setMeasured] = useState<Measured | null>(null);
  useLayoutEffect(() => {
    const element = list.current;
    if (element === null) return;
    const look = () => setMeasured(measure(element));
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, [list]);
  return measured;
}

/** Heights of stations and marks, from the list's elements and their `data-` attributes. */
function measure(list: HTMLElement): Measured | null {
  const box = list.getBoundingClientRect();
  const width = Number.parseFloat(getComputedStyle(list).paddingLeft);
  if (box.height === 0 || !width) return null;
  const scale = list.offsetHeight / box.height; // a scaled page measures scaled
  const middle = (element: Element) => {
    const rect = element.getClientRects()[0] ?? element.getBoundingClientRect(); // its first line
    return ((rect.top + rect.bottom) / 2 - box.top) * scale;
  };
  const stations = Array.from(list.querySelectorAll<HTMLElement>("[data-station]"), (element) => {
    const rect = element.getBoundingClientRect();
    const marks = Array.from(element.querySelectorAll<HTMLElement>("[data-end]"), (mark) => ({
      y: middle(mark),
      end: mark.dataset.end as "origin" | "insertion",
      heads: (mark.dataset.heads ?? "").split(" ").map(Number),
    }));
    return {
      kind: element.dataset.station as MeasuredStation["kind"],
      top: (rect.top - box.top) * scale,
      bottom: (rect.bottom - box.top) * scale,
      y: middle(element.querySelector("h4") ?? element),
      marks,
    };
  });
  return { width, height: list.offsetHeight, stations };
}

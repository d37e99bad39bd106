import { useLayoutEffect } from "preact/hooks";

const STEP = 0.97;
const LEAST = 0.5;

/** Makes the wall's letters as large as its content allows: nobody in the back row can scroll.
 *
 * `what` names the content; the fit is looked for anew when it, the window or the fonts change. */
export function useFit(main: { current: HTMLElement | null }, what: string): void {
  useLayoutEffect(() => {
    const look = () => main.current && shrinkToFit(main.current, document.documentElement);
    look();
    const soon = requestAnimationFrame(look); // the figure beside the record is drawn after the first look
    window.addEventListener("resize", look);
    document.fonts?.addEventListener("loadingdone", look);
    return () => {
      cancelAnimationFrame(soon);
      window.removeEventListener("resize", look);
      document.fonts?.removeEventListener("loadingdone", look);
    };
  }, [main, what]);
}

function shrinkToFit(main: HTMLElement, root: HTMLElement): void {
  for (let scale = 1; scale > LEAST; scale *= STEP) {
    root.style.setProperty("--fit", String(scale));
    if (main.scrollHeight <= main.clientHeight && main.scrollWidth <= main.clientWidth) return;
  }
}

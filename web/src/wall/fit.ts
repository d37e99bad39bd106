import { useLayoutEffect } from "preact/hooks";

const STEP = 0.97;
const LEAST = 0.5;

/** Makes the wall's letters as large as its content allows, up to `most` times their size: nobody in the
 * back row can scroll. The fit is looked for anew when content, window or fonts change. */
export function useFit(main: { current: HTMLElement | null }, most: number): void {
  useLayoutEffect(() => {
    const look = () => main.current && shrinkToFit(main.current, document.documentElement, most);
    look();
    const content = new MutationObserver(look);
    if (main.current) content.observe(main.current, { childList: true, characterData: true, subtree: true });
    window.addEventListener("resize", look);
    document.fonts?.addEventListener("loadingdone", look);
    return () => {
      content.disconnect();
      window.removeEventListener("resize", look);
      document.fonts?.removeEventListener("loadingdone", look);
    };
  }, [main, most]);
}

/** Letters keep their size as long as rows can move together: only then they become smaller. */
function shrinkToFit(main: HTMLElement, root: HTMLElement, most: number): void {
  const fits = (scale: number, tight: boolean) => {
    root.style.setProperty("--fit", String(scale));
    root.toggleAttribute("data-tight", tight);
    return main.scrollHeight <= main.clientHeight && main.scrollWidth <= main.clientWidth;
  };
  for (let scale = most; scale > 1; scale *= STEP) if (fits(scale, false)) return;
  if (fits(1, false)) return;
  for (let scale = 1; scale > LEAST; scale *= STEP) if (fits(scale, true)) return;
}

import type { RefObject } from "preact";
import { useLayoutEffect, useState } from "preact/hooks";

/** How wide an element is on the screen, in points; 0 before it is there. */
export function useWideOnScreen(of: RefObject<Element | null>): number {
  const [wide, setWide] = useState(0);
  useLayoutEffect(() => {
    const element = of.current;
    if (element === null) return;
    const measure = () => setWide(Math.round(element.getBoundingClientRect().width));
    measure();
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return wide;
}

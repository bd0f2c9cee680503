import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";

/** Width of an element in CSS pixels, followed as it changes; `before` until it has been measured. */
export function useWidth(element: RefObject<HTMLElement | null>, before: number): number {
  const [width, setWidth] = useState(before);
  useEffect(() => {
    const box = element.current;
    if (box === null) return;
    const observer = new ResizeObserver(([entry]) => setWidth(Math.max(240, entry?.contentRect.width ?? before)));
    observer.observe(box);
    return () => observer.disconnect();
  }, [element, before]);
  return width;
}

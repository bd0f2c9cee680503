import type { ZoomActs } from "./useCanvasChart.ts";

/** How many times wider a second is drawn after one step in. */
export const ZOOM_STEP = 1.6;

const SHARE_MOVED = 0.25;

/** What a key does to the zoom of a chart; undefined where it means nothing to it. */
export function zoomKey(
  { key, shiftKey }: Pick<KeyboardEvent, "key" | "shiftKey">,
  zoom: ZoomActs,
): (() => void) | undefined {
  if (key === "+" || key === "=") return () => zoom.by(ZOOM_STEP);
  if (key === "-" || key === "−") return () => zoom.by(1 / ZOOM_STEP);
  if (key === "0") return zoom.reset;
  if (shiftKey && key === "ArrowRight") return () => zoom.move(SHARE_MOVED);
  if (shiftKey && key === "ArrowLeft") return () => zoom.move(-SHARE_MOVED);
  return undefined;
}

import type { Cursor } from "./chartCursor.ts";
import type { ChartSpec } from "./chartSpec.ts";
import type { Palette } from "./palette.ts";

/** What the canvas shows at one moment; the drawing plugins of a chart read it at each redraw. */
export interface Drawing {
  spec: ChartSpec;
  hidden: ReadonlySet<string>;
  cursor: Cursor | null;
  palette: Palette;
  /** Edges of a span while it is dragged, and until it is settled where they come to lie. */
  dragged: { readonly id: string; readonly start: number; readonly end: number } | null;
}

import type { Chart, Plugin } from "chart.js";
import type { Drawing } from "./drawing.ts";
import { seriesStyle } from "./seriesStyle.ts";
import { type Anchor, END_SHARE, isCrowded, spreadApart, type Tag, tagsOf } from "./tags.ts";

const RADIUS = 8;
/** Width beside a crowded picture for the numbers of its curves. */
export const TAG_COLUMN = 40;

/** Draws the number of its legend entry at the end of each curve. */
export function tagsPlugin(drawing: Drawing): Plugin {
  return {
    id: "tags",
    afterDatasetsDraw(chart) {
      const placed = tagsOf(drawing.spec).flatMap((tag) => {
        const anchor = drawing.hidden.has(tag.series.id) ? null : anchorOf(chart, tag);
        return anchor === null ? [] : [{ tag, anchor }];
      });
      const column = isCrowded(drawing.spec);
      const [top, bottom] = [chart.chartArea.top + RADIUS, chart.chartArea.bottom - RADIUS];
      const starts = placed.map(({ tag, anchor }) => beside(chart, tag, { anchor, column }));
      const inColumn = starts.filter(({ x }) => x > chart.chartArea.right).length;
      // Where the column has no room for all they touch, so that none leaves the picture.
      const apart = Math.min(2 * RADIUS + 2, (bottom - top) / Math.max(1, inColumn - 1));
      const places = spreadApart(starts, { apart, top, bottom });
      const tags = placed.map((one, at): PlacedTag => ({ ...one, place: places[at]! }));
      // All leaders first: none crosses a number.
      for (const one of tags) drawLeader(chart, drawing, one);
      for (const one of tags) drawTag(chart, drawing, one);
    },
  };
}

/** The last point of the curve inside the picture. */
function anchorOf(chart: Chart, { series }: Tag): Anchor | null {
  const { left, right, top, bottom } = chart.chartArea;
  const x = chart.scales["x"]!;
  const y = chart.scales[series.secondAxis ? "y2" : "y"] ?? chart.scales["y"]!;
  const inside = series.points
    .map((point) => ({ x: x.getPixelForValue(point.x), y: y.getPixelForValue(point.y) }))
    .filter((point) => point.x >= left && point.x <= right && point.y >= top && point.y <= bottom);
  const last = inside.reduce<Anchor | null>((far, point) => (far === null || point.x > far.x ? point : far), null);
  return last;
}

interface Start {
  readonly anchor: Anchor;
  /** The curves that reach the end of the picture have their numbers in a column beside it. */
  readonly column: boolean;
}

/** A number stands on the end of its line, but beside a measured point, which it must not hide. */
function beside({ chartArea: { left, right } }: Chart, { series }: Tag, { anchor: { x, y }, column }: Start): Anchor {
  if (series.kind === "measured") return { x: x + CLEAR + RADIUS < right ? x + CLEAR : x - CLEAR, y };
  if (column && x >= right - END_SHARE * (right - left)) return { x: right + TAG_COLUMN - RADIUS - 4, y };
  return { x: Math.min(x, right - RADIUS - 1), y };
}

/** Pixels from a point to the number beside it. */
const CLEAR = 20;

interface PlacedTag {
  readonly tag: Tag;
  readonly anchor: Anchor;
  readonly place: Anchor;
}

const colourOf = ({ palette }: Drawing, { series }: Tag) => palette.series[seriesStyle(series.style).colour]!;

/** The line from the end of a curve to its number, where that stands aside. */
function drawLeader({ ctx }: Chart, drawing: Drawing, { tag, anchor, place }: PlacedTag): void {
  ctx.save();
  ctx.strokeStyle = colourOf(drawing, tag);
  ctx.lineWidth = 1;
  ctx.beginPath();
  ctx.moveTo(anchor.x, anchor.y);
  ctx.lineTo(place.x, place.y);
  ctx.stroke();
  ctx.restore();
}

function drawTag({ ctx }: Chart, drawing: Drawing, { tag, place }: PlacedTag): void {
  const { palette } = drawing;
  ctx.save();
  ctx.strokeStyle = colourOf(drawing, tag);
  ctx.beginPath();
  ctx.arc(place.x, place.y, RADIUS, 0, 2 * Math.PI);
  ctx.fillStyle = palette.paper;
  ctx.fill();
  ctx.lineWidth = 1.75;
  ctx.stroke();
  ctx.fillStyle = palette.ink;
  ctx.font = "600 11px system-ui, sans-serif";
  ctx.textAlign = "center";
  ctx.textBaseline = "middle";
  ctx.fillText(String(tag.number), place.x, place.y + 0.5);
  ctx.restore();
}

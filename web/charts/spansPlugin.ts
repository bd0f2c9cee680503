import type { Chart, Plugin } from "chart.js";
import type { ChartSpan } from "./chartSpec.ts";
import type { Drawing } from "./drawing.ts";
import { hatch } from "./hatch.ts";
import { faded, type Palette } from "./palette.ts";

/** Shades the spans behind the data, each kind with its own pattern. */
export function spansPlugin(drawing: Drawing): Plugin {
  return {
    id: "spans",
    beforeDatasetsDraw(chart) {
      const spans = drawing.spec.spans ?? [];
      if (spans.length === 0) return;
      const { ctx, chartArea } = chart;
      ctx.save();
      ctx.beginPath();
      ctx.rect(chartArea.left, chartArea.top, chartArea.width, chartArea.height);
      ctx.clip();
      for (const span of spans) drawSpan(chart, shownSpan(span, drawing), drawing);
      ctx.restore();
    },
  };
}

/** The lines of a plateau lie level like the grid, so they are kept fainter than it. */
const HATCH_OPACITY = { plateau: 0.2, tare: 0.55, leftOut: 0.55, rejected: 0.35 } as const;

/** Width from which on the reason of a stretch that was not taken stands upright in it, px. */
const UPRIGHT = 14;

/** The span with the edges it has under the pointer. */
function shownSpan(span: ChartSpan, { dragged }: Drawing): ChartSpan {
  return dragged?.id === span.id ? { ...span, start: dragged.start, end: dragged.end } : span;
}

function drawSpan(chart: Chart, span: ChartSpan, { palette }: Drawing): void {
  const { ctx, chartArea } = chart;
  const x = chart.scales["x"]!;
  const [left, right] = [x.getPixelForValue(span.start), x.getPixelForValue(span.end)];
  const width = Math.max(1, right - left);
  const colour =
    span.kind === "plateau" ? palette.series[2]! : span.kind === "tare" ? palette.series[0]! : palette.hatch;
  ctx.fillStyle = faded(colour, 0.1);
  ctx.fillRect(left, chartArea.top, width, chartArea.height);
  ctx.fillStyle = hatch(ctx, span.kind, faded(colour, HATCH_OPACITY[span.kind]));
  ctx.fillRect(left, chartArea.top, width, chartArea.height);
  ctx.strokeStyle = colour;
  ctx.lineWidth = 1;
  ctx.strokeRect(left, chartArea.top, width, chartArea.height);
  drawLabel(chart, span, palette);
}

/** The label in the middle of what is on show of the span, where it has room; a reason may stand upright. */
function drawLabel({ ctx, chartArea, scales }: Chart, span: ChartSpan, palette: Palette): void {
  const left = Math.max(scales["x"]!.getPixelForValue(span.start), chartArea.left);
  const width = Math.min(scales["x"]!.getPixelForValue(span.end), chartArea.right) - left;
  ctx.font = "11px system-ui, sans-serif";
  if (ctx.measureText(span.label).width < width - 4) {
    ctx.fillStyle = palette.ink;
    ctx.textAlign = "center";
    ctx.fillText(span.label, left + width / 2, chartArea.top + 13);
  } else if (span.kind === "rejected" && width > UPRIGHT && ctx.measureText(span.label).width < chartArea.height) {
    ctx.fillStyle = palette.ink;
    ctx.textAlign = "right";
    ctx.translate(left + width / 2 + 4, chartArea.top + 6);
    ctx.rotate(-Math.PI / 2);
    ctx.fillText(span.label, 0, 0);
    ctx.rotate(Math.PI / 2);
    ctx.translate(-(left + width / 2 + 4), -(chartArea.top + 6));
  }
}

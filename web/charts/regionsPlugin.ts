import type { Chart, Plugin } from "chart.js";
import type { ChartSeries } from "./chartSpec.ts";
import type { Drawing } from "./drawing.ts";
import { hatch } from "./hatch.ts";
import { faded } from "./palette.ts";
import { seriesStyle } from "./seriesStyle.ts";

/** Draws what has an area: uncertainty bands, the spread of a trace and the impossible side of a limit. */
export function regionsPlugin(drawing: Drawing): Plugin {
  return {
    id: "regions",
    beforeDatasetsDraw(chart) {
      const { ctx, chartArea } = chart;
      ctx.save();
      ctx.beginPath();
      ctx.rect(chartArea.left, chartArea.top, chartArea.width, chartArea.height);
      ctx.clip();
      const shown = drawing.spec.series.filter(({ id }) => !drawing.hidden.has(id));
      for (const series of shown) if (series.kind === "limit") drawLimit(chart, series, drawing);
      for (const series of shown) if (hasBand(series)) drawBand(chart, series, drawing);
      ctx.restore();
    },
  };
}

function hasBand({ kind, points }: ChartSeries): boolean {
  const banded = kind === "fit" || kind === "prediction" || kind === "trace";
  return banded && points.some(({ yInterval }) => yInterval !== undefined);
}

function scalesOf(chart: Chart, series: ChartSeries, drawing: Drawing) {
  return { x: chart.scales["x"]!, y: chart.scales[series.secondAxis && drawing.spec.y2 ? "y2" : "y"]! };
}

function drawBand(chart: Chart, series: ChartSeries, drawing: Drawing): void {
  const { ctx } = chart;
  const { x, y } = scalesOf(chart, series, drawing);
  const edge = (end: 0 | 1) =>
    series.points.map((point) => [x.getPixelForValue(point.x), y.getPixelForValue(point.yInterval?.[end] ?? point.y)]);
  tracePath(ctx, [...edge(1), ...edge(0).reverse()]);
  const colour = drawing.palette.series[seriesStyle(series.style).colour]!;
  ctx.fillStyle = faded(colour, series.kind === "trace" ? 0.35 : 0.16);
  ctx.fill();
}

/** From the edge to the side away from zero; the edge goes on level beyond its ends, as far as the picture goes. */
function drawLimit(chart: Chart, series: ChartSeries, drawing: Drawing): void {
  if (series.points.length === 0) return;
  const { ctx, chartArea } = chart;
  const { x, y } = scalesOf(chart, series, drawing);
  const edge = series.points.map((point) => [x.getPixelForValue(point.x), y.getPixelForValue(point.y)]);
  const negative = series.points.at(-1)!.y < 0;
  const far = negative ? chartArea.bottom : chartArea.top;
  tracePath(ctx, [...edge, [edge.at(-1)![0]!, far], [edge[0]![0]!, far]]);
  ctx.fillStyle = hatch(ctx, "limit", drawing.palette.hatch);
  ctx.fill();
  ctx.fillStyle = faded(drawing.palette.hatch, 0.08);
  ctx.fill();
  tracePath(ctx, edge, false);
  ctx.strokeStyle = drawing.palette.soft;
  ctx.lineWidth = 1.5;
  ctx.stroke();
}

function tracePath(ctx: CanvasRenderingContext2D, points: readonly (readonly number[])[], closed = true): void {
  ctx.beginPath();
  points.forEach(([x, y], at) => {
    if (at === 0) ctx.moveTo(x!, y!);
    else ctx.lineTo(x!, y!);
  });
  if (closed) ctx.closePath();
}

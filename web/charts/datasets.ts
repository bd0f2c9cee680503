import type { ChartDataset } from "chart.js";
import type { ChartPoint, ChartSeries } from "./chartSpec.ts";
import type { Drawing } from "./drawing.ts";
import type { Palette } from "./palette.ts";
import { seriesStyle } from "./seriesStyle.ts";

export type Dataset = ChartDataset<"line" | "scatterWithErrorBars"> & { readonly seriesId: string };

/** The series as the chart library wants them. Limits are areas only and drawn by the regions plugin. */
export function datasetsOf({ spec, hidden, palette }: Drawing): Dataset[] {
  return spec.series
    .filter(({ id, kind }) => kind !== "limit" && !hidden.has(id))
    .map((series) => datasetOf(series, palette, series.secondAxis && spec.y2 ? "y2" : "y"));
}

function datasetOf(series: ChartSeries, palette: Palette, yAxisID: string): Dataset {
  const style = seriesStyle(series.style);
  const colour = palette.series[style.colour]!;
  const shared = { seriesId: series.id, label: series.name, yAxisID, borderColor: colour, animation: false as const };
  if (series.kind === "measured" || series.kind === "leftOut") {
    const hollow = series.kind === "leftOut";
    return {
      ...shared,
      type: "scatterWithErrorBars",
      data: series.points.map(withErrors) as never,
      pointStyle: style.marker,
      pointRadius: hollow ? 5 : 5.5,
      pointHoverRadius: 8,
      borderWidth: hollow || style.marker === "crossRot" || style.marker === "star" ? 2 : 1,
      backgroundColor: hollow ? palette.paper : colour,
      errorBarColor: { v: [colour] },
      errorBarLineWidth: { v: [hollow ? 1 : 1.5] },
      errorBarWhiskerColor: { v: [colour] },
      errorBarWhiskerLineWidth: { v: [hollow ? 1 : 1.5] },
      errorBarWhiskerSize: { v: [7] },
    } as unknown as Dataset;
  }
  return {
    ...shared,
    type: "line",
    data: series.points.map(({ x, y }) => ({ x, y })),
    pointRadius: isFewSamples(series) ? 1.75 : 0,
    pointHoverRadius: 4,
    pointHitRadius: 6,
    borderWidth: series.kind === "trace" ? 1 : 2,
    borderDash: series.kind === "prediction" ? [...style.dash] : [],
    backgroundColor: colour,
    fill: false,
    tension: 0,
  };
}

/** So few that each sample of a log is worth a dot. */
function isFewSamples({ kind, points }: ChartSeries): boolean {
  return kind === "trace" && points.length <= 250 && points.every(({ yInterval }) => yInterval === undefined);
}

/** A point without an interval gets bars of no length. */
function withErrors({ x, y, xInterval, yInterval }: ChartPoint) {
  return {
    x,
    y,
    ...(xInterval ? { xMin: xInterval[0], xMax: xInterval[1] } : {}),
    ...(yInterval ? { yMin: yInterval[0], yMax: yInterval[1] } : {}),
  };
}

import { formatNumber, formatUncertain } from "../../shared/quantity/format.ts";
import type { ChartAxis, ChartPoint, ChartSeries, ChartSpec } from "./chartSpec.ts";

/** Number with its interval and unit: "12.4 ± 0.3 N". */
function withInterval(value: number, interval: readonly [number, number] | undefined, axis: ChartAxis): string {
  const unit = { symbol: axis.unit, factor: 1 };
  if (interval && interval[1] > interval[0])
    return formatUncertain({ value, standardUncertainty: 0, interval95: interval }, unit);
  const number = formatNumber(value, axis.digits ?? 4);
  return axis.unit === "" ? number : `${number}\u202f${axis.unit}`;
}

/** The axis that a series is read on. */
export function yAxisOf(spec: ChartSpec, series: ChartSeries): ChartAxis {
  return series.secondAxis && spec.y2 ? spec.y2 : spec.y;
}

/** Title of an axis: "Thrust (N)". */
export function axisTitle({ label, unit }: ChartAxis): string {
  return unit === "" ? label : `${label} (${unit})`;
}

/** The lines of a tooltip. A trace has least and greatest where others have an interval. */
export function pointLines(spec: ChartSpec, series: ChartSeries, point: ChartPoint): string[] {
  const y = yAxisOf(spec, series);
  const value =
    series.kind === "trace" && point.yInterval
      ? `${formatNumber(point.yInterval[0], 4)} to ${withInterval(point.yInterval[1], undefined, y)}`
      : withInterval(point.y, point.yInterval, y);
  return [
    `${y.label}: ${value}`,
    `${spec.x.label}: ${withInterval(point.x, point.xInterval, spec.x)}`,
    ...(point.note ? [point.note] : []),
  ];
}

/** What is spoken when the cursor comes to a point. */
export function spokenPoint(spec: ChartSpec, series: ChartSeries, index: number): string {
  const point = series.points[index]!;
  return `${series.name}, ${index + 1} of ${series.points.length}. ${pointLines(spec, series, point).join(". ")}.`;
}

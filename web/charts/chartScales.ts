import type { ChartOptions, ScaleOptionsByType } from "chart.js";
import type { ChartAxis } from "./chartSpec.ts";
import type { Drawing } from "./drawing.ts";
import { isOverTime } from "./overTime.ts";
import { axisTitle } from "./pointWords.ts";
import { type Range, xRange, yRange } from "./ranges.ts";

export const FONT = "system-ui, sans-serif";

/** Ends, titles and colours of the axes; while `zoomed`, the ends that a person gave them stay. */
export function applyScales(options: Pick<ChartOptions, "scales">, drawing: Drawing, zoomed: boolean): void {
  const { spec } = drawing;
  const timed = isOverTime(spec);
  const last = zoomed ? (options.scales as Record<string, Ends> | undefined) : undefined;
  const within = timed && last ? rangeOf(last["x"] ?? {}) : undefined;
  const upright = (axis: ChartAxis, name: "y" | "y2", position: "left" | "right") =>
    scaleOf(within ? withoutEnds(axis) : axis, yRange(spec, name, within), drawing, { position });
  const scales: Record<string, Ends> = {
    x: scaleOf(spec.x, xRange(spec), drawing, { position: "bottom", tight: timed }),
    y: upright(spec.y, "y", "left"),
    ...(spec.y2 ? { y2: upright(spec.y2, "y2", "right") } : {}),
  };
  if (last) {
    for (const [name, scale] of Object.entries(scales))
      if (!timed || name === "x") Object.assign(scale, pickEnds(last[name] ?? {}));
  }
  options.scales = scales as never;
}

interface Ends {
  readonly min?: number;
  readonly max?: number;
}

const pickEnds = ({ min, max }: Ends) => ({
  ...(min === undefined ? {} : { min }),
  ...(max === undefined ? {} : { max }),
});

const rangeOf = ({ min = -Infinity, max = Infinity }: Ends): Range => ({ low: min, high: max });

const withoutEnds = ({ label, unit }: ChartAxis): ChartAxis => ({ label, unit });

function scaleOf(
  axis: ChartAxis,
  { low, high }: Range,
  { palette }: Drawing,
  { position, tight = false }: { position: "bottom" | "left" | "right"; tight?: boolean },
) {
  return {
    type: "linear",
    position,
    // A log ends where it ends; other pictures end at a round number, but for noise about zero, which is worth no step.
    ...(tight ? { min: low, max: high } : { suggestedMin: low, suggestedMax: high }),
    ...(isNoiseBelowZero(low, high) ? { min: low } : {}),
    ...pickEnds(axis),
    title: { display: true, text: axisTitle(axis), color: palette.ink, font: { family: FONT, size: 13, weight: 600 } },
    ticks: {
      color: palette.soft,
      maxRotation: 0,
      autoSkipPadding: 14,
      includeBounds: false,
      format: { useGrouping: false },
    },
    grid: { color: palette.line, drawOnChartArea: position !== "right", tickLength: 5 },
    border: { color: palette.soft },
  } as unknown as ScaleOptionsByType<"linear">;
}

const isNoiseBelowZero = (low: number, high: number) => low < 0 && -low < 0.05 * high;

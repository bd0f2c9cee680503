import type { Uncertain } from "../../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries } from "../../../charts/chartSpec.ts";

const STEPS = 40;

/** Points from zero to `reach`, closer together near zero, where thrust against power bends most. */
export function curve(reach: number, y: (x: number) => number): ChartPoint[] {
  if (!(reach > 0)) return [];
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const x = reach * (step / STEPS) ** 2;
    return { x, y: step === 0 ? 0 : y(x) };
  });
}

export function greatest(series: readonly ChartSeries[]): number {
  return Math.max(0, ...series.flatMap((one) => one.points.map((point) => point.xInterval?.[1] ?? point.x)));
}

export function thrustOf(thrust: Uncertain): Pick<ChartPoint, "y" | "yInterval"> {
  return { y: thrust.value, yInterval: thrust.interval95 };
}

/** Rotation rate that predictions are drawn up to where nothing was measured, rpm. */
export const UNMEASURED_REACH = 4000;

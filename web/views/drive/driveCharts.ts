import type { OperatingPoint } from "../../../shared/model/drive.ts";
import type { ShownUnit } from "../../../shared/quantity/format.ts";
import type { ChartMarker, ChartPoint, ChartSpec } from "../../charts/chartSpec.ts";
import { AMPERE, NEWTON } from "../bench/shownUnits.ts";
import type { Driven } from "./driveModel.ts";

/** Steps of a sweep from zero to full throttle; a sweep that the supply cuts short has fewer points. */
export const SWEEP_STEPS = 40;

/** Bollard thrust of one thruster against throttle, every propeller side by side, with bands. */
export function thrustChart(driven: readonly Driven[], throttle: number): ChartSpec {
  return sweepChart(driven, throttle, { quantity: "thrust", label: "Bollard thrust of one thruster", unit: NEWTON });
}

/** Current from the pack against throttle, every propeller side by side, with bands. */
export function currentChart(driven: readonly Driven[], throttle: number): ChartSpec {
  return sweepChart(driven, throttle, { quantity: "supplyCurrent", label: "Current from the pack", unit: AMPERE });
}

interface Shown {
  readonly quantity: "thrust" | "supplyCurrent";
  readonly label: string;
  readonly unit: ShownUnit;
}

function sweepChart(driven: readonly Driven[], throttle: number, { quantity, label, unit }: Shown): ChartSpec {
  return {
    title: `${label} against throttle`,
    x: { label: "Throttle", unit: "%", min: 0, max: 100 },
    y: { label, unit: unit.symbol, min: 0 },
    series: driven
      .filter(({ sweep }) => sweep.length > 0)
      .map(({ propeller, sweep }) => ({
        id: `${quantity}-${propeller.name}`,
        name: propeller.name,
        kind: "prediction" as const,
        style: propeller.style,
        points: sweep.map((point, step) => sweepPoint(point, (100 * step) / SWEEP_STEPS, quantity, unit)),
      })),
    markers: [{ x: throttle * 100, label: `${Math.round(100 * throttle)} %` }, ...firstLimit(driven)],
  };
}

function sweepPoint(point: OperatingPoint, x: number, quantity: Shown["quantity"], { factor }: ShownUnit): ChartPoint {
  const doubt = point.uncertainties?.[quantity];
  const y = point[quantity] / factor;
  if (doubt === undefined) return { x, y };
  return { x, y, yInterval: [doubt.interval95[0] / factor, doubt.interval95[1] / factor] };
}

/** Where the first limit of all is met; which one it is, and those of the others, are told in words beside the picture. */
function firstLimit(driven: readonly Driven[]): ChartMarker[] {
  const reached = driven.flatMap(({ point }) =>
    (point?.limits ?? []).flatMap((limit) => limit.reachedAtThrottle ?? []),
  );
  return reached.length === 0 ? [] : [{ x: 100 * Math.min(...reached), label: "first limit" }];
}

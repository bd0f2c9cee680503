import type { Plateau, Reduction } from "../../../shared/model/reduction.ts";
import { thrustCoefficient } from "../../../shared/propeller/coefficients.ts";
import { formatUncertain } from "../../../shared/quantity/format.ts";
import { scaled } from "../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSpec } from "../../charts/chartSpec.ts";
import { plateauName } from "./plateausModel.ts";
import { RPM } from "./shownUnits.ts";

/** What thrust is drawn against: the product the coefficient multiplies, or the square of the rotation rate. */
export type FitAxis = "thrustScale" | "rotationRateSquared";

export const FIT_AXES: readonly { readonly id: FitAxis; readonly label: string }[] = [
  { id: "thrustScale", label: "ρ n² D⁴" },
  { id: "rotationRateSquared", label: "Rotation rate squared" },
];

/** Thrust that a coefficient of one would give at this plateau, ρ n² D⁴, N. */
export function thrustScale(reduction: Reduction, rotationRate: number): number {
  const { fluid, diameter } = reduction;
  return 1 / thrustCoefficient({ thrust: 1, density: fluid.density, rotationRate, diameter: diameter.value });
}

/** Measured thrust with its line through the origin, the band of the line, and the momentum limit where power is known. */
export function thrustFitChart(reduction: Reduction, axis: FitAxis): ChartSpec {
  const turning = reduction.plateaus.filter((plateau) => plateau.rotationRate.value > 0);
  const place = (plateau: Plateau) => abscissa(reduction, plateau.rotationRate.value, axis);
  const highest = Math.max(0, ...turning.map((plateau) => plateau.rotationRate.value)) * 1.06;
  const points = (used: boolean) =>
    turning
      .filter((plateau) => plateau.used === used)
      .map((plateau) => ({
        ...measuredPoint(plateau, place(plateau), reduction.plateaus.indexOf(plateau)),
        ...(axis === "rotationRateSquared" && { xInterval: squared(plateau.rotationRate.interval95) }),
      }));
  return {
    title: "Thrust and its fit through the origin",
    x:
      axis === "thrustScale"
        ? { label: "Density × rotation rate² × diameter⁴", unit: "N", min: 0 }
        : { label: "Rotation rate squared", unit: "(rev/s)²", min: 0 },
    y: { label: "Thrust", unit: "N" },
    series: [
      { id: "measured", name: "Plateaus in the fit", kind: "measured", style: 0, points: points(true) },
      { id: "leftOut", name: "Plateaus left out", kind: "leftOut", style: 0, points: points(false) },
      {
        id: "fit",
        name: `Fit, thrust coefficient ${formatUncertain(reduction.thrustCoefficient)}`,
        kind: "fit",
        style: 0,
        points: fitLine(reduction, highest, axis),
      },
      {
        id: "limit",
        name: "Momentum limit for the measured power",
        kind: "limit",
        style: 0,
        points: limit(turning, place),
      },
    ].filter((series) => series.points.length > 0) as ChartSpec["series"],
  };
}

/** How far each plateau lies from the fit, in standard uncertainties of that distance. */
export function residualChart(reduction: Reduction): ChartSpec {
  const points = reduction.plateaus.flatMap((plateau, index) =>
    plateau.residual === null
      ? []
      : [
          {
            x: plateau.rotationRate.value / RPM.factor,
            y: plateau.residual,
            used: plateau.used,
            note: plateauName(index),
          },
        ],
  );
  const reach = 2 * Math.ceil(Math.max(2.5, ...points.map((point) => Math.abs(point.y))) / 2);
  const of = (used: boolean): ChartPoint[] =>
    points.filter((point) => point.used === used).map(({ x, y, note }) => ({ x, y, note }));
  const xs = points.map((point) => point.x);
  const ends = xs.length === 0 ? [] : [Math.min(...xs), Math.max(...xs)];
  return {
    title: "Distance of each plateau from the fit, in standard uncertainties u",
    x: { label: "Rotation rate", unit: "rpm" },
    y: { label: "Residual", unit: "u", min: -reach, max: reach },
    series: [
      { id: "measured", name: "In the fit", kind: "measured", style: 0, points: of(true) },
      { id: "leftOut", name: "Left out", kind: "leftOut", style: 0, points: of(false) },
      {
        id: "expected",
        name: "Fit; the band holds 95 of 100 points",
        kind: "fit",
        style: 0,
        points: ends.map((x) => ({ x, y: 0, yInterval: [-2, 2] as const })),
      },
    ].filter((series) => series.points.length > 0) as ChartSpec["series"],
  };
}

function fitLine(reduction: Reduction, highest: number, axis: FitAxis): ChartPoint[] {
  if (!(highest > 0)) return [];
  const steps = 16;
  return Array.from({ length: steps + 1 }, (_, step) => {
    if (step === 0) return { x: 0, y: 0, yInterval: [0, 0] as const };
    // Equal steps of the abscissa, which grows with the square of the rate.
    const rotationRate = highest * Math.sqrt(step / steps);
    const thrust = scaled(reduction.thrustCoefficient, thrustScale(reduction, rotationRate));
    return { x: abscissa(reduction, rotationRate, axis), y: thrust.value, yInterval: thrust.interval95 };
  });
}

function limit(plateaus: readonly Plateau[], place: (plateau: Plateau) => number): ChartPoint[] {
  const points = plateaus
    .flatMap((plateau) => (plateau.momentumLimit === null ? [] : [{ x: place(plateau), y: plateau.momentumLimit }]))
    .sort((a, b) => a.x - b.x);
  return points.length < 2 ? [] : [{ x: 0, y: 0 }, ...points];
}

function measuredPoint(plateau: Plateau, x: number, index: number): ChartPoint {
  const lines = `lines ${plateau.firstLine} to ${plateau.lastLine}`;
  const reason = plateau.leftOutBecause === null ? "" : `, left out: ${plateau.leftOutBecause}`;
  return {
    x,
    y: plateau.thrust.value,
    yInterval: plateau.thrust.interval95,
    note: `${plateauName(index)}, ${lines}${reason}`,
  };
}

function abscissa(reduction: Reduction, rotationRate: number, axis: FitAxis): number {
  return axis === "thrustScale" ? thrustScale(reduction, rotationRate) : rotationRate ** 2;
}

function squared([low, high]: readonly [number, number]): readonly [number, number] {
  return [Math.max(0, low) ** 2, high ** 2];
}

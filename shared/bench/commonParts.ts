import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { FluidState } from "../model/fluid.ts";
import type { Propeller } from "../model/parts.ts";
import { effectiveDegreesOfFreedom } from "../numeric/welchSatterthwaite.ts";
import type { Channel } from "./channels.ts";
import type { FitPoint, OriginFit } from "./coefficientFit.ts";
import type { TareLine } from "./tareLine.ts";

/** One cause of doubt that all plateaus of a run share. */
export interface CommonPart {
  /** In words. */
  readonly name: string;
  /** Runs that share the key share the error. */
  readonly key: string;
  /** Change of the coefficient when the cause is off by one standard uncertainty; the sign matters between coefficients. */
  readonly change: number;
  readonly degreesOfFreedom: number;
}

const known = (name: string, key: string, change: number): CommonPart[] =>
  change === 0 ? [] : [{ name, key, change, degreesOfFreedom: Infinity }];

/**
 * Calibration factor of a channel on which the coefficient depends with `power`: change = power × u_rel × K. Runs
 * reduced with the same factor, offset and uncertainty were calibrated together.
 */
export function calibrationPart(channel: Channel | undefined, words: string, K: number, power: number): CommonPart[] {
  if (channel === undefined) return [];
  const { role, scale, shift, relativeUncertainty } = channel;
  const key = `${role}-calibration:${scale}:${shift}:${relativeUncertainty}`;
  return known(`calibration of the ${words}`, key, power * relativeUncertainty * K);
}

/** Diameter, with K ∝ D^`power`. */
export function diameterPart(
  { name, diameter, diameterUncertainty }: Propeller,
  K: number,
  power: number,
): CommonPart[] {
  return known("diameter", `diameter:${name}:${diameter}`, (power * K * diameterUncertainty) / diameter);
}

/** What a stated fluid is usually known to: standard uncertainties. Common practice, no source. */
const STATED_TO = { temperature: 1, salinity: 1, pressure: 100, humidity: 0.1 } as const;

/** Density, with K ∝ 1/ρ. Each run has its own: two days of "18 °C" need not be off alike. */
export function densityPart(fluid: FluidState, K: number, run: string): CommonPart[] {
  const relative = relativeDensityUncertainty(fluid);
  return known("density of the fluid, its temperature taken as known to 1 K", `density:${run}`, -K * relative);
}

function relativeDensityUncertainty(fluid: FluidState): number {
  const { density } = fluidProperties(fluid);
  const changes = Object.entries(STATED_TO).map(([quantity, step]) => {
    const stated = (fluid as Record<string, unknown>)[quantity];
    if (typeof stated !== "number") return 0;
    // Towards the middle of the range, where the formula holds for sure.
    const ceiling = { temperature: 293.15, salinity: 20, pressure: 101325, humidity: 0.5 }[quantity]!;
    const moved = { ...fluid, [quantity]: stated > ceiling ? stated - step : stated + step };
    return fluidProperties(moved as FluidState).density - density;
  });
  return Math.hypot(...changes) / density;
}

/** Zero of the scale: window means, rounding at rest and bow between windows, each with all plateaus that share it. */
export function tarePart(
  name: string,
  key: string,
  {
    points,
    fit,
    line,
  }: { readonly points: readonly FitPoint[]; readonly fit: OriginFit; readonly line: TareLine | null },
): CommonPart[] {
  if (line === null || line.windows.length === 0) return [];
  const pull = points.map((point, i) => (point.tare ? fit.influences[i]! * point.perTare : 0));
  const windows = line.windows.map(({ mean }, w) => ({
    standardUncertainty:
      Math.abs(pull.reduce((sum, g, i) => sum + g * (points[i]!.tare?.parts[w] ?? 0), 0)) * mean.scatter,
    degreesOfFreedom: mean.degreesOfFreedom,
  }));
  const sharedByAll = [Math.abs(pull.reduce((sum, g) => sum + g, 0)) * line.rounding, ...bows(points, pull)];
  const parts = [
    ...windows,
    ...sharedByAll.map((standardUncertainty) => ({ standardUncertainty, degreesOfFreedom: Infinity })),
  ];
  const change = Math.hypot(...parts.map((part) => part.standardUncertainty));
  return change === 0 ? [] : [{ name, key, change, degreesOfFreedom: effectiveDegreesOfFreedom(parts) }];
}

function bows(points: readonly FitPoint[], pull: readonly number[]): number[] {
  const byGap = new Map<string, number>();
  points.forEach(({ tare }, i) => {
    if (tare) byGap.set(tare.gap, (byGap.get(tare.gap) ?? 0) + pull[i]! * tare.bow);
  });
  return [...byGap.values()].map(Math.abs);
}

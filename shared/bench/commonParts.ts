import { fluidProperties } from "../fluid/fluidProperties.ts";
import type { FluidState } from "../model/fluid.ts";
import type { Propeller } from "../model/parts/propeller.ts";
import { combined } from "../numeric/combined.ts";
import { CELSIUS_ZERO, STANDARD_ATMOSPHERE } from "../quantity/constants.ts";
import type { Channel } from "./channels.ts";
import type { FitPoint, OriginFit } from "./coefficientFit.ts";
import { asOneInput, type DoubtInput, powerInput } from "./doubtInput.ts";
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
  /** What it is made of, for the budget; absent where only the change is known. Their parts add up to it in squares. */
  readonly inputs?: readonly DoubtInput[];
}

const known = (name: string, key: string, change: number, inputs: readonly DoubtInput[]): CommonPart[] =>
  change === 0 ? [] : [{ name, key, change, degreesOfFreedom: Infinity, inputs }];

/**
 * Calibration factor of a channel on which the coefficient depends with `power`: change = power × u_rel × K. Runs
 * reduced with the same factor, offset and uncertainty were calibrated together.
 */
export function calibrationPart(channel: Channel | undefined, words: string, K: number, power: number): CommonPart[] {
  if (channel === undefined) return [];
  const { role, scale, shift, relativeUncertainty } = channel;
  const key = `${role}-calibration:${scale}:${shift}:${relativeUncertainty}`;
  const name = `calibration of the ${words}`;
  const input = powerInput(
    { name, source: "calibration", unit: "1" },
    { standardUncertainty: relativeUncertainty, sensitivity: power * K, nominal: 1 },
  );
  return known(name, key, power * relativeUncertainty * K, input);
}

/**
 * What the diameter brings to a coefficient with K ∝ D^`power`: u = |power| K u(D)/D.
 *
 * Source   JCGM 100:2008, 5.1.6, from memory, for a product of powers.
 */
export function diameterPart(
  { name, diameter, diameterUncertainty }: Propeller,
  K: number,
  power: number,
): CommonPart[] {
  const input = powerInput(
    { name: "diameter", source: "diameter", unit: "m" },
    { standardUncertainty: diameterUncertainty, sensitivity: (power * K) / diameter, nominal: diameter },
  );
  return known("diameter", `diameter:${name}:${diameter}`, (power * K * diameterUncertainty) / diameter, input);
}

/** What a stated fluid is usually known to: standard uncertainties. Common practice, no source. */
const STATED_TO = {
  temperature: { step: 1, unit: "K" },
  salinity: { step: 1, unit: "g/kg" },
  pressure: { step: 100, unit: "Pa" },
  humidity: { step: 0.1, unit: "1" },
} as const;

/**
 * What the density brings to a coefficient with K ∝ 1/ρ, from the doubt of the stated temperature, salinity, pressure and
 * humidity. Each run has its own: two days of "18 °C" need not be off alike.
 *
 * Source   JCGM 100:2008, 5.1.6, from memory; densities as `fluidProperties`; doubts of a stated fluid, common
 *          practice, no source.
 */
export function densityPart(fluid: FluidState, K: number, run: string): CommonPart[] {
  const inputs = densityInputs(fluid, K);
  const change = -K * Math.hypot(...inputs.map((input) => (input.sensitivity * input.standardUncertainty) / K));
  return known("density of the fluid, its temperature taken as known to 1 K", `density:${run}`, change, inputs);
}

function densityInputs(fluid: FluidState, K: number): DoubtInput[] {
  const { density } = fluidProperties(fluid);
  return Object.entries(STATED_TO).flatMap(([quantity, { step, unit }]) => {
    const stated = (fluid as Record<string, unknown>)[quantity];
    if (typeof stated !== "number") return [];
    // Towards the middle of the range, where the formula holds for sure.
    const ceiling = { temperature: CELSIUS_ZERO + 20, salinity: 20, pressure: STANDARD_ATMOSPHERE, humidity: 0.5 }[
      quantity
    ]!;
    const to = stated > ceiling ? -step : step;
    const moved = fluidProperties({ ...fluid, [quantity]: stated + to } as FluidState).density;
    const perUnit = (moved - density) / density / to;
    return powerInput(
      { name: `density of the fluid: its ${quantity}`, source: "fluid", unit },
      // Straight over the few steps that a draw may go: over 4 K the density of water bends by 1 part in 10 000.
      { standardUncertainty: step, sensitivity: -K * perUnit, nominal: 1 / perUnit },
    );
  });
}

/** A fit and the tare that its readings hang on. */
export interface TarePull {
  readonly points: readonly FitPoint[];
  readonly fit: Pick<OriginFit, "influences">;
  readonly line: TareLine | null;
  /** Unit of the tare; N where not said. */
  readonly unit?: string;
}

/** Zero of the scale: window means, rounding at rest and bow between windows, each with all plateaus that share it. */
export function tarePart(name: string, key: string, { points, fit, line, unit = "N" }: TarePull): CommonPart[] {
  if (line === null || line.windows.length === 0) return [];
  const pull = points.map((point, i) => (point.tare ? fit.influences[i]! * point.perTare : 0));
  const words = { kind: "B", distribution: "rectangular", unit } as const;
  const bent = bows(points, pull);
  const inputs = [
    ...asOneInput({
      words: {
        ...words,
        name: `${name}: its readings at rest`,
        source: "tareReadings",
        kind: "A",
        distribution: "student",
      },
      sensitivities: pullOnWindows(points, pull, line.windows.length),
      uncertainties: line.windows.map(({ mean }) => mean.scatter),
      degreesOfFreedom: line.windows.map(({ mean }) => mean.degreesOfFreedom),
      commonDegreesOfFreedom: line.windows.map(({ mean }) => mean.commonDegreesOfFreedom),
    }),
    ...asOneInput({
      words: { ...words, name: `${name}: steps of the reading at rest`, source: "tareResolution" },
      sensitivities: [pull.reduce((sum, g) => sum + g, 0)],
      uncertainties: [line.rounding],
    }),
    ...asOneInput({
      words: { ...words, name: `${name}: its drift between rests`, source: "tareDrift" },
      sensitivities: bent.map(({ pull: gap }) => gap),
      uncertainties: bent.map(({ pull: gap, bow }) => (gap === 0 ? 0 : bow / Math.abs(gap))),
    }),
  ];
  const { standardUncertainty: change, degreesOfFreedom } = combined(
    inputs.map((input) => ({
      standardUncertainty: Math.abs(input.sensitivity * input.standardUncertainty),
      degreesOfFreedom: input.degreesOfFreedom,
    })),
  );
  return change === 0 ? [] : [{ name, key, change, degreesOfFreedom, inputs }];
}

/** Change of the coefficient by the mean of each window. */
function pullOnWindows(points: readonly FitPoint[], pull: readonly number[], windows: number): number[] {
  const sums = new Array<number>(windows).fill(0);
  points.forEach(({ tare }, i) => {
    for (const { window, part } of tare?.parts ?? []) sums[window]! += pull[i]! * part;
  });
  return sums;
}

/** For each stretch between rests: change of the coefficient by its zero, and by one standard uncertainty of its bow. */
function bows(points: readonly FitPoint[], pull: readonly number[]): { pull: number; bow: number }[] {
  const byGap = new Map<string, { pull: number; bow: number }>();
  points.forEach(({ tare }, i) => {
    if (!tare) return;
    const before = byGap.get(tare.gap) ?? { pull: 0, bow: 0 };
    byGap.set(tare.gap, { pull: before.pull + pull[i]!, bow: before.bow + pull[i]! * tare.bow });
  });
  return [...byGap.values()].map(({ pull: sum, bow }) => ({ pull: sum, bow: Math.abs(bow) }));
}

import type { AdvanceSample, AdvanceSource, ThrustAtSpeedRequest } from "../../model/thrustAtSpeed.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import type { AdvanceCandidate } from "./advanceCandidate.ts";

/**
 * How far the shape of a curve through the right point at rest was found to be off, as a part of the coefficient at
 * rest. It grows from nothing at rest to its whole size at 0.4 of the advance ratio where the thrust ends, and stays.
 *
 * From published curves of a small propeller (two blades, pitch ratio 0.80, blade Reynolds number 4e4 to 7e4: Deters,
 * Ananda & Selig, AIAA 2014-2151; University of Illinois propeller data set, volume 2) against B screws of that pitch,
 * area ratio 0.30 to 0.50, scaled through its point at rest: K_T differs by up to 0.11 of its value at rest, K_Q by up
 * to 0.27, as the blades of the small propeller stall at rest. The numbers cover that at 95 %. Momentum theory alone
 * knows no pitch: its part covers the tested B screws of pitch ratio 0.6 to 1.4 up to J = 0.6, and grows with J without
 * end.
 */
const SHAPE = { thrust: 0.08, torque: 0.15, fullAt: 0.4 } as const;

/**
 * Correlation of the shape parts of K_T and K_Q: a blade that pushes more than the curve at a speed takes more torque too,
 * 54 of the 57 points of the comparison above have both differences of one sign. At fixed power, where the two work against
 * each other, 0.8 holds what was measured within 1.5 standard uncertainties at all points; whole correlation would be off
 * by up to 3, none would make the band twice as wide. Computed apart from this code by numpy 2.4.6 and scipy 1.17.1.
 * Momentum theory alone, which has no curve of K_Q, keeps the two apart.
 */
const SHAPE_CORRELATION = 0.8;
const MOMENTUM_SHAPE_PER_J = 0.46;

interface Doubt {
  readonly bollard: number;
  readonly spread: number;
  readonly shape: number;
}

/** K_T and K_Q of the chosen curve at one advance ratio, with their doubt. */
export function sampleAt(
  J: number,
  chosen: AdvanceCandidate,
  others: readonly AdvanceCandidate[],
  request: ThrustAtSpeedRequest,
): AdvanceSample {
  const thrustParts = doubt(J, "thrust", chosen, others, request);
  const torqueParts = doubt(J, "torque", chosen, others, request);
  return {
    advanceRatio: J,
    thrustCoefficient: uncertain(chosen.thrust(J), sizeOf(thrustParts)),
    torqueCoefficient: uncertain(chosen.torque(J), sizeOf(torqueParts)),
    thrustParts,
  };
}

/**
 * Standard uncertainty of T/(ρ n² D⁴) at one advance ratio where K_Q is found too, so that an error in it moves n and with
 * it the thrust: by `slope` of it; 0 at a fixed rotation rate. The differences to a rival curve and the unmeasured shape
 * change K_T and K_Q together, and so do the errors of the point at rest as far as they are said to be correlated.
 *
 *   u² = u²(bollard) + u²(differences) + u²(shape),   each of K_T + slope K_Q, in the unit of K_T, 1
 *
 * Source   sums of correlated parts: JCGM 100:2008, 5.2.2; differences as a rectangular distribution, 4.3.7. Both
 *          from memory.
 */
export function thrustUncertainty(
  J: number,
  slope: number,
  chosen: AdvanceCandidate,
  others: readonly AdvanceCandidate[],
  request: ThrustAtSpeedRequest,
): number {
  const thrust = doubt(J, "thrust", chosen, others, request);
  const torque = doubt(J, "torque", chosen, others, request);
  const differences = rivalsAt(J, chosen, others).map(
    (rival) => rival.thrust(J) - chosen.thrust(J) + slope * (rival.torque(J) - chosen.torque(J)),
  );
  const shape = ofBoth(thrust.shape, slope * torque.shape, chosen.source === "momentum" ? 0 : SHAPE_CORRELATION);
  const bollard = ofBoth(thrust.bollard, slope * torque.bollard, request.bollard.correlation ?? 0);
  return Math.hypot(bollard, rectangular(differences), shape);
}

/** Standard uncertainty of a sum of two parts, of either sign, whose errors are correlated. Source: GUM 5.2.2. */
function ofBoth(one: number, other: number, correlation: number): number {
  return Math.sqrt(Math.max(0, one ** 2 + other ** 2 + 2 * correlation * one * other));
}

function sizeOf({ bollard, spread, shape }: Doubt): number {
  return Math.hypot(bollard, spread, shape);
}

/** Standard uncertainty of a value that may lie anywhere up to the farthest of some others. Source: GUM 4.3.7. */
function rectangular(differences: readonly number[]): number {
  return Math.max(0, ...differences.map(Math.abs)) / Math.sqrt(3);
}

/** A curve that has ended says nothing more; momentum theory, which knows no pitch, never did. */
function rivalsAt(J: number, chosen: AdvanceCandidate, others: readonly AdvanceCandidate[]): AdvanceCandidate[] {
  if (chosen.source === "openWater") return [];
  return others.filter(({ source, end }) => source !== "momentum" && source !== "openWater" && J <= end);
}

/** Three independent parts: the point at rest, what the given curves disagree in, and the shape nobody measured. */
function doubt(
  J: number,
  of: "thrust" | "torque",
  chosen: AdvanceCandidate,
  others: readonly AdvanceCandidate[],
  request: ThrustAtSpeedRequest,
): Doubt {
  const at = chosen[of](J);
  const { value, standardUncertainty } = request.bollard[of === "thrust" ? "thrustCoefficient" : "torqueCoefficient"];
  const common = Math.abs(at) * (standardUncertainty / value);
  const shape = shapePart(J, of, chosen, request) * value;
  const measured = chosen.source === "openWater" ? measuredPart(J, of, request) : 0;
  const differences = rivalsAt(J, chosen, others).map((rival) => rival[of](J) - at);
  return { bollard: Math.hypot(common, measured), spread: rectangular(differences), shape };
}

/** Shape part as a part of the coefficient at rest. */
function shapePart(
  J: number,
  of: "thrust" | "torque",
  { source, end, zeroThrust }: AdvanceCandidate,
  { openWater }: ThrustAtSpeedRequest,
): number {
  if (source === "momentum") return MOMENTUM_SHAPE_PER_J * J;
  const [low, high] = source === "openWater" && openWater ? openWater.range : [0, 0];
  const outside = Math.max(0, J - high, low - J);
  return SHAPE[of] * Math.min(1, outside / (SHAPE.fullAt * (zeroThrust ?? end)));
}

/** Standard uncertainty of the measured curve at J: sqrt(x' C x), x the powers of J. */
function measuredPart(J: number, of: "thrust" | "torque", { openWater }: ThrustAtSpeedRequest): number {
  if (openWater === undefined) return 0;
  const { covariance } = of === "thrust" ? openWater.thrustCurve : openWater.powerCurve;
  let variance = 0;
  for (const [i, row] of covariance.entries()) {
    for (const [j, c] of row.entries()) variance += c * J ** (i + j);
  }
  const u = Math.sqrt(Math.max(0, variance));
  return of === "thrust" ? u : u * TORQUE_OVER_POWER_COEFFICIENT;
}

/** What the chosen curve rests on, in one sentence. */
export const SOURCE_REASONS: Readonly<Record<AdvanceSource, string>> = {
  openWater: "The run at speed was measured; nothing is nearer to the truth.",
  series:
    "A series propeller, scaled to pass through the measured point at rest: its fall with speed was measured, on larger and smoother propellers.",
  bladeElements:
    "Blade elements of this propeller, scaled to pass through the measured point at rest: the fall with speed is computed.",
  momentum:
    "Momentum theory alone, with the merit at rest kept: it knows no pitch, so the end of the thrust is not in it. State a series propeller or the blades for a better one.",
};

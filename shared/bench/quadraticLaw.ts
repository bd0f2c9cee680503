import { straightLine } from "../numeric/straightLine.ts";
import { effectiveDegreesOfFreedom } from "../numeric/welchSatterthwaite.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { type FitPoint, weighingUncertainty, wideningOf } from "./coefficientFit.ts";
import { tarePart } from "./commonParts.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { TareLine } from "./tareLine.ts";

/** How well the thrust follows the square of the rotation rate. */
export interface QuadraticLaw {
  /** Slope of ln T on ln n; theory 2. */
  readonly exponent: Uncertain;
  /** Thrust at zero speed by a line with intercept against n², N; theory 0. */
  readonly intercept: Uncertain;
}

/**
 * Exponent and intercept of the plateaus in use, weighted, with doubt in both, widened by their scatter.
 * `sign` is that of the thrust coefficient: a reversed load cell has the same exponent.
 * Throws InputProblem `bench.no-thrust` or `bench.one-speed`.
 */
export function quadraticLawOf(
  plateaus: readonly JudgedPlateau[],
  sign: number,
  { singleReadings, tare }: { readonly singleReadings: boolean; readonly tare: TareLine },
): QuadraticLaw {
  const pushing = plateaus.filter(({ thrustPoint }) => thrustPoint.y * sign > NO_THRUST);
  if (pushing.length < 2) throw noThrust(plateaus.length, pushing.length);
  const rates = pushing.map(({ measured }) => measured.rotationRate.mean);
  if (Math.max(...rates) - Math.min(...rates) < 1e-6 * Math.max(...rates)) throw oneSpeed(rates[0]!);
  const points = pushing.map(({ thrustPoint }) => thrustPoint);
  const exponent = straightLine({
    x: rates.map(Math.log),
    y: points.map((point) => Math.log(Math.abs(point.y))),
    uncertaintyX: points.map((point) => point.roundingX / (2 * point.x)),
    uncertaintyY: points.map((point) => weighingUncertainty(point) / Math.abs(point.y)),
  });
  const all = plateaus.map(({ thrustPoint }) => thrustPoint);
  const line = straightLine({
    x: all.map((point) => point.x),
    y: all.map((point) => point.y),
    uncertaintyX: all.map((point) => point.roundingX),
    uncertaintyY: all.map(weighingUncertainty),
  });
  // By the change of each thrust: d ln T = dT / T.
  const logWeights = points.map(
    (point) => (point.y / Math.hypot(weighingUncertainty(point), exponent.slope * stepOf(point) * point.y)) ** 2,
  );
  const bySlope = pulls(rates.map(Math.log), logWeights).slope.map((pull, i) => pull / Math.abs(points[i]!.y));
  const weights = all.map((point) => 1 / (weighingUncertainty(point) ** 2 + (line.slope * point.roundingX) ** 2));
  const byIntercept = pulls(
    all.map((point) => point.x),
    weights,
  ).intercept;
  const told = { singleReadings, tare };
  return {
    exponent: withDoubt({ value: exponent.slope, fit: exponent, pull: bySlope, points, slope: line.slope }, told),
    intercept: withDoubt({ value: line.intercept, fit: line, pull: byIntercept, points: all, slope: line.slope }, told),
  };
}

/** Relative step of the rotation rate because it comes in steps. */
function stepOf(point: FitPoint): number {
  return point.roundingX / (2 * point.x);
}

/** Change of slope and intercept of a weighted line by a change of each y. */
function pulls(x: readonly number[], weights: readonly number[]) {
  const all = weights.reduce((sum, w) => sum + w, 0);
  const mean = x.reduce((sum, xi, i) => sum + weights[i]! * xi, 0) / all;
  const spread = x.reduce((sum, xi, i) => sum + weights[i]! * (xi - mean) ** 2, 0);
  const slope = x.map((xi, i) => (weights[i]! * (xi - mean)) / spread);
  return { slope, intercept: slope.map((pull, i) => weights[i]! / all - mean * pull) };
}

interface Found {
  readonly value: number;
  readonly fit: { readonly chiSquared: number; readonly degreesOfFreedom: number };
  /** Change of the value by the thrust of each point. */
  readonly pull: readonly number[];
  readonly points: readonly FitPoint[];
  /** Thrust per ρ n² D⁴. */
  readonly slope: number;
}

/** What the points bring by themselves, widened by their scatter, and the zero of the scale, which they share. */
function withDoubt(
  { value, fit, pull, points, slope }: Found,
  { singleReadings, tare }: { readonly singleReadings: boolean; readonly tare: TareLine },
): Uncertain {
  const own = points.flatMap((point, i) => [
    { standardUncertainty: Math.abs(pull[i]! * point.scatter), degreesOfFreedom: point.scatterDegreesOfFreedom },
    {
      standardUncertainty: Math.abs(
        pull[i]! * Math.hypot(point.rounding, point.repeatability, slope * point.roundingX),
      ),
      degreesOfFreedom: Infinity,
    },
  ]);
  const promised = Math.hypot(...own.map(({ standardUncertainty }) => standardUncertainty));
  const { chiSquared, degreesOfFreedom } = fit;
  const widening = wideningOf(chiSquared, degreesOfFreedom, effectiveDegreesOfFreedom(own), singleReadings);
  const shared = tarePart("zero", "zero", { points, fit: { influences: pull }, line: tare })[0];
  const parts = [
    { standardUncertainty: promised * widening.ratio, degreesOfFreedom: widening.degreesOfFreedom },
    { standardUncertainty: shared?.change ?? 0, degreesOfFreedom: shared?.degreesOfFreedom ?? Infinity },
  ];
  const all = Math.hypot(...parts.map(({ standardUncertainty }) => standardUncertainty));
  return uncertain(value, all, effectiveDegreesOfFreedom(parts));
}

/** Less than any scale can read, N. */
const NO_THRUST = 1e-9;

/** Throws InputProblem `bench.no-thrust` where no plateau reads any thrust: nothing can be fitted. */
export function requireThrust(plateaus: readonly JudgedPlateau[]): void {
  if (plateaus.every(({ thrustPoint }) => Math.abs(thrustPoint.y) < NO_THRUST)) throw noThrust(plateaus.length, 0);
}

function noThrust(plateaus: number, pushing: number): InputProblem {
  return new InputProblem({
    code: "bench.no-thrust",
    where: "thrust",
    found: `${pushing} of ${plateaus} plateaus push in the direction that the thrust grows in`,
    needed: "at least two plateaus whose thrust rises with the rotation rate",
    mend: "Check that the thrust column is the load cell, and that the tare window is at rest",
  });
}

function oneSpeed(rate: number): InputProblem {
  return new InputProblem({
    code: "bench.one-speed",
    where: "rotation rate",
    found: `all plateaus turn at ${rate.toPrecision(4)} rev/s`,
    needed: "plateaus at two rotation rates or more, to see that thrust grows with the square",
    mend: "Run a sweep with several throttle steps",
  });
}

import { combined, known, withParts } from "../numeric/combined.ts";
import { straightLine } from "../numeric/straightLine.ts";
import { InputProblem } from "../quantity/problem.ts";
import type { Uncertain } from "../quantity/uncertain.ts";
import {
  type FitPoint,
  fittingUncertainty,
  pointParts,
  scattersMore,
  wideningOf,
  withoutSpread,
} from "./coefficientFit.ts";
import { tarePart } from "./commonParts.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { TareLine } from "./tareLine.ts";

/** How well the thrust follows the square of the rotation rate. */
export interface QuadraticLaw {
  /** Slope of ln T on ln n; theory 2. */
  readonly exponent: Uncertain;
  /** Thrust at zero speed by a line with intercept against n², N; theory 0. */
  readonly intercept: Uncertain;
  /** The same were the zero of the scale known to have stood as the rests say: what a departure is told by. */
  readonly ifZeroStood: { readonly exponent: Uncertain; readonly intercept: Uncertain };
}

export interface LawSetting {
  readonly singleReadings: boolean;
  readonly tare: TareLine;
  /** By how much the zero may have moved unseen between the rests, N; see `unseenZero`. */
  readonly zeroReach: number;
}

/**
 * Exponent and intercept of the plateaus in use, weighted, with doubt in both, widened by their scatter.
 * `sign` is that of the thrust coefficient: a reversed load cell has the same exponent.
 * Throws InputProblem `bench.no-thrust` or `bench.one-speed`.
 */
export function quadraticLawOf(plateaus: readonly JudgedPlateau[], sign: number, told: LawSetting): QuadraticLaw {
  const pushing = plateaus.filter(({ thrustPoint }) => thrustPoint.y * sign > NO_THRUST);
  if (pushing.length < 2) throw noThrust(plateaus.length, pushing.length);
  const rates = pushing.map(({ measured }) => measured.rotationRate.mean);
  if (Math.max(...rates) - Math.min(...rates) < 1e-6 * Math.max(...rates)) throw oneSpeed(rates[0]!);
  const points = pushing.map(({ thrustPoint }) => thrustPoint);
  const power = powerLine(points.map(withoutSpread), rates);
  // A power other than 2 that explains the plateaus by their readings alone needs no spread among them.
  const needsSpread = !isExplained(power);
  const all = plateaus.map(({ thrustPoint }) => (needsSpread ? thrustPoint : withoutSpread(thrustPoint)));
  const [exponent, intercept] = [needsSpread ? powerLine(points, rates) : power, zeroLineOf(all)];
  const seen = { ...told, zeroReach: 0 };
  // What was taken as a spread among the plateaus is not taken as a zero that moved as well.
  const honest = needsSpread && all.some(({ spread }) => spread) ? seen : told;
  return {
    exponent: withDoubt(exponent, honest),
    intercept: withDoubt(intercept, honest),
    ifZeroStood: { exponent: withDoubt(exponent, seen), intercept: withDoubt(intercept, seen) },
  };
}

const isExplained = ({ fit: { chiSquared, degreesOfFreedom } }: Found) =>
  degreesOfFreedom < 2 || !scattersMore(chiSquared, degreesOfFreedom);

/** ln T against ln n. */
function powerLine(points: readonly FitPoint[], rates: readonly number[]): Found {
  const fit = straightLine({
    x: rates.map(Math.log),
    y: points.map((point) => Math.log(Math.abs(point.y))),
    uncertaintyX: points.map(stepOf),
    uncertaintyY: points.map((point) => fittingUncertainty(point) / Math.abs(point.y)),
  });
  const weights = points.map(
    (point) => (point.y / Math.hypot(fittingUncertainty(point), fit.slope * stepOf(point) * point.y)) ** 2,
  );
  // By the change of each thrust: d ln T = dT / T.
  const pull = pulls(rates.map(Math.log), weights).slope.map((one, i) => one / Math.abs(points[i]!.y));
  const perX = points.reduce((sum, { x, y }) => sum + y / x, 0) / points.length;
  return { value: fit.slope, fit, pull, points, slope: perX };
}

/** T against ρ n² D⁴, with an intercept. */
function zeroLineOf(points: readonly FitPoint[]): Found {
  const x = points.map((point) => point.x);
  const fit = straightLine({
    x,
    y: points.map((point) => point.y),
    uncertaintyX: points.map((point) => point.roundingX),
    uncertaintyY: points.map(fittingUncertainty),
  });
  const weights = points.map((point) => 1 / (fittingUncertainty(point) ** 2 + (fit.slope * point.roundingX) ** 2));
  return { value: fit.intercept, fit, pull: pulls(x, weights).intercept, points, slope: fit.slope };
}

/** Relative step of the rotation rate because it comes in steps. */
const stepOf = ({ x, roundingX }: FitPoint) => roundingX / (2 * x);

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

/**
 * What the points bring by themselves, widened by their scatter; the zero of the scale as the rests show it, which they
 * share; and where a zero that moved unseen is likely, that: off by as much at each plateau, all of them to the worse side.
 */
function withDoubt(
  { value, fit, pull, points, slope }: Found,
  { singleReadings, tare, zeroReach }: LawSetting,
): Uncertain {
  const own = combined(pointParts(points, pull, slope));
  const { chiSquared, degreesOfFreedom } = fit;
  const widening = wideningOf(chiSquared, degreesOfFreedom, own.degreesOfFreedom, singleReadings);
  const shared = tarePart("zero", "zero", { points, fit: { influences: pull }, line: tare })[0];
  return withParts(value, [
    { standardUncertainty: own.standardUncertainty * widening.ratio, degreesOfFreedom: widening.degreesOfFreedom },
    { standardUncertainty: shared?.change ?? 0, degreesOfFreedom: shared?.degreesOfFreedom ?? Infinity },
    ...known((zeroReach * pull.reduce((sum, one) => sum + Math.abs(one), 0)) / Math.sqrt(3)),
  ]);
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

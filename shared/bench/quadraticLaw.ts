import { straightLine } from "../numeric/straightLine.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { weighingUncertainty, wideningOf } from "./coefficientFit.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";

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
  singleReadings: boolean,
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
  const widened = (value: number, standardError: number, fit: { chiSquared: number; degreesOfFreedom: number }) => {
    const widening = wideningOf(fit.chiSquared, fit.degreesOfFreedom, Infinity, singleReadings);
    return uncertain(value, standardError * widening.ratio, widening.degreesOfFreedom);
  };
  return {
    exponent: widened(exponent.slope, exponent.slopeStandardError, exponent),
    intercept: widened(line.intercept, line.interceptStandardError, line),
  };
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

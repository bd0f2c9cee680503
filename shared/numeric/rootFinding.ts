import { OutOfDomain } from "../quantity/problem.ts";
import { finiteAt } from "./finiteAt.ts";

export interface RootOptions {
  /** Width of the last bracket over the size of the root. */
  readonly relativeTolerance?: number;
  readonly maximumSteps?: number;
}

export interface Root {
  readonly root: number;
  /** False if the steps ran out before the bracket was narrow enough. */
  readonly converged: boolean;
  /** Evaluations of the function beyond the two ends. */
  readonly steps: number;
}

/**
 * Root of a continuous `f` between `low` and `high`, where it changes sign, by Brent's method: inverse quadratic
 * interpolation or secant where they help, bisection where they do not, so it can not leave the bracket.
 *
 * Source   Brent, Algorithms for Minimization without Derivatives (1973), ch. 4, procedure zero.
 * Range    f(low) and f(high) of opposite sign, or one of them 0.
 * Error    relativeTolerance times the root, but not below four rounding units of the larger end.
 * Throws   OutOfDomain `numeric.no-sign-change`, or `numeric.not-finite` where f gives no finite number.
 *
 * @example bracketedRoot((x) => x * x - 2, 0, 2).root // 1.414213562373
 */
export function bracketedRoot(
  f: (x: number) => number,
  low: number,
  high: number,
  { relativeTolerance = 1e-12, maximumSteps = 100 }: RootOptions = {},
): Root {
  const floor = 2 * Number.EPSILON * Math.max(Math.abs(low), Math.abs(high));
  // Brent's letters: b is the best guess, a the one before, c the end on the other side of the root.
  let [a, b, fa, fb] = [low, high, finiteAt(f, low), finiteAt(f, high)];
  if (fa !== 0 && Math.sign(fa) === Math.sign(fb)) throw noSignChange(low, high, fa, fb);
  let [c, fc] = [a, fa];
  let step = b - a;
  let stepBefore = step;
  for (let steps = 0; ; steps++) {
    if (Math.sign(fb) === Math.sign(fc)) {
      [c, fc] = [a, fa];
      step = b - a;
      stepBefore = step;
    }
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb];
    const tolerance = floor + 0.5 * relativeTolerance * Math.abs(b);
    const half = 0.5 * (c - b);
    const converged = fb === 0 || Math.abs(half) <= tolerance;
    if (converged || steps === maximumSteps) return { root: b, converged, steps };

    const promising = Math.abs(stepBefore) >= tolerance && Math.abs(fa) > Math.abs(fb);
    const trial = promising ? interpolationStep({ a, b, c, fa, fb, fc }) : Number.NaN;
    const bound = Math.min(1.5 * Math.abs(half) - 0.5 * tolerance, 0.5 * Math.abs(stepBefore));
    const accepted = Math.sign(trial) === Math.sign(half) && Math.abs(trial) < bound;
    stepBefore = accepted ? step : half;
    step = accepted ? trial : half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = finiteAt(f, b);
  }
}

interface Bracket {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly fa: number;
  readonly fb: number;
  readonly fc: number;
}

/** Step from b by inverse quadratic interpolation through three points, or by the secant where two coincide. */
function interpolationStep({ a, b, c, fa, fb, fc }: Bracket): number {
  const s = fb / fa;
  if (a === c) return (-(c - b) * s) / (1 - s);
  const q = fa / fc;
  const r = fb / fc;
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1));
}

function noSignChange(low: number, high: number, atLow: number, atHigh: number): OutOfDomain {
  return new OutOfDomain({
    code: "numeric.no-sign-change",
    found: `the function is ${atLow} at ${low} and ${atHigh} at ${high}`,
    needed: "opposite signs at the two ends",
    mend: "",
  });
}

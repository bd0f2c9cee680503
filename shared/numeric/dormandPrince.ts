import { OutOfDomain } from "../quantity/problem.ts";

export interface InitialValueProblem {
  /** Writes dy/dx at (x, y) into `slope`. */
  readonly derivative: (x: number, y: Float64Array, slope: Float64Array) => void;
  readonly start: Float64Array;
  readonly from: number;
  readonly to: number;
  /** Local error allowed in a step, as a part of the sizes that `errorSize` gives. */
  readonly tolerance: number;
  /** Writes the size that the error of each component is measured by. */
  readonly errorSize: (y: Float64Array, size: Float64Array) => void;
  /** Length of the first step to try; a hundredth of the way if absent. */
  readonly firstStep?: number;
  readonly maximumSteps?: number;
}

export interface Integrated {
  readonly end: Float64Array;
  /** False if the steps ran out before the end was reached. */
  readonly converged: boolean;
  /** Steps that were taken, refused ones included. */
  readonly steps: number;
  /** Length that a next step would have. */
  readonly nextStep: number;
}

/** Slopes at the seven stages of a step. */
type Stages = readonly [
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
  Float64Array,
];

/** A step is not made shorter than this part of the whole way: beyond, rounding is greater than the error it saves. */
const SHORTEST = 1e-14;

/**
 * Solution at `to` of dy/dx = f(x, y) from y(from) = start, by an explicit Runge-Kutta pair of orders 5 and 4 with steps
 * whose length follows the error.
 *
 * Source   Dormand & Prince, J. Comput. Appl. Math. 6 (1980) 19, table 2; step control as Hairer, Nørsett & Wanner,
 *          Solving Ordinary Differential Equations I (1993), II.4, eq. 4.13.
 * Assumes  f smooth, or with kinks that short steps may cross; not stiff.
 * Error    about `tolerance` times the number of steps, of the sizes given.
 * Throws   OutOfDomain `numeric.not-finite` where the solution leaves the finite numbers.
 */
export function integrate(problem: InitialValueProblem): Integrated {
  const { derivative, start, from, to, tolerance, errorSize, maximumSteps = 20_000 } = problem;
  const way = to - from;
  const size = new Float64Array(start.length);
  const trial = new Float64Array(start.length);
  const fresh = () => new Float64Array(start.length);
  const k: Stages = [fresh(), fresh(), fresh(), fresh(), fresh(), fresh(), fresh()];
  const y = Float64Array.from(start);
  let x = from;
  let step = Math.min(problem.firstStep ?? way / 100, way);
  derivative(x, y, k[0]);
  for (let steps = 1; steps <= maximumSteps; steps++) {
    const isLast = x + step >= to - SHORTEST * way;
    const h = isLast ? to - x : step;
    takeStages(derivative, x, h, y, trial, k);
    errorSize(y, size);
    const error = errorOf(k, h, size) / tolerance;
    if (Number.isNaN(error)) throw notFinite(x);
    const factor = Math.min(6, Math.max(0.15, 0.9 * error ** -0.2));
    if (error > 1 && h > SHORTEST * way) {
      step = h * factor;
      continue;
    }
    y.set(trial);
    x += h;
    k[0].set(k[6]);
    // The last step was cut to end at `to`; what came before says more of the next.
    if (isLast) return { end: y, converged: true, steps, nextStep: Math.max(step, h * factor) };
    step = Math.max(h * factor, SHORTEST * way);
  }
  return { end: y, converged: false, steps: maximumSteps, nextStep: step };
}

/**
 * Slopes of the seven stages of Dormand & Prince's table 2; the argument of the last is the fifth-order result and stays in
 * `trial`. Written out, as a table walked in a loop takes twice as long.
 */
function takeStages(
  derivative: InitialValueProblem["derivative"],
  x: number,
  h: number,
  y: Float64Array,
  trial: Float64Array,
  [k1, k2, k3, k4, k5, k6, k7]: Stages,
): void {
  const n = y.length;
  for (let i = 0; i < n; i++) trial[i] = y[i]! + h * (1 / 5) * k1[i]!;
  derivative(x + h / 5, trial, k2);
  for (let i = 0; i < n; i++) trial[i] = y[i]! + h * ((3 / 40) * k1[i]! + (9 / 40) * k2[i]!);
  derivative(x + (3 / 10) * h, trial, k3);
  for (let i = 0; i < n; i++) {
    trial[i] = y[i]! + h * ((44 / 45) * k1[i]! - (56 / 15) * k2[i]! + (32 / 9) * k3[i]!);
  }
  derivative(x + (4 / 5) * h, trial, k4);
  for (let i = 0; i < n; i++) {
    const first = (19372 / 6561) * k1[i]! - (25360 / 2187) * k2[i]!;
    trial[i] = y[i]! + h * (first + (64448 / 6561) * k3[i]! - (212 / 729) * k4[i]!);
  }
  derivative(x + (8 / 9) * h, trial, k5);
  for (let i = 0; i < n; i++) {
    const first = (9017 / 3168) * k1[i]! - (355 / 33) * k2[i]! + (46732 / 5247) * k3[i]!;
    trial[i] = y[i]! + h * (first + (49 / 176) * k4[i]! - (5103 / 18656) * k5[i]!);
  }
  derivative(x + h, trial, k6);
  for (let i = 0; i < n; i++) {
    const first = (35 / 384) * k1[i]! + (500 / 1113) * k3[i]! + (125 / 192) * k4[i]!;
    trial[i] = y[i]! + h * (first - (2187 / 6784) * k5[i]! + (11 / 84) * k6[i]!);
  }
  derivative(x + h, trial, k7);
}

/** Greatest difference of the orders 5 and 4 over the size of its component. */
function errorOf([k1, , k3, k4, k5, k6, k7]: Stages, h: number, size: Float64Array): number {
  let greatest = 0;
  for (let i = 0; i < size.length; i++) {
    const first = (71 / 57600) * k1[i]! - (71 / 16695) * k3[i]! + (71 / 1920) * k4[i]!;
    const difference = first - (17253 / 339200) * k5[i]! + (22 / 525) * k6[i]! - (1 / 40) * k7[i]!;
    const error = Math.abs(h * difference) / size[i]!;
    // Written this way round, a NaN is kept.
    if (!(error <= greatest)) greatest = error;
  }
  return greatest;
}

function notFinite(x: number): OutOfDomain {
  return new OutOfDomain({
    code: "numeric.not-finite",
    found: `the solution at ${x} is not a finite number`,
    needed: "a finite number",
    mend: "",
  });
}

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

/** Table of Dormand & Prince's 5(4) pair: nodes, stages (the last row is the fifth-order result), and what the two orders differ by. */
const NODES = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1] as const;
const STAGES: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const DIFFERENCE = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40] as const;

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
  const k = NODES.map(() => new Float64Array(start.length));
  const y = Float64Array.from(start);
  let x = from;
  let step = Math.min(problem.firstStep ?? way / 100, way);
  derivative(x, y, k[0]!);
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
    k[0]!.set(k[6]!);
    // The last step was cut to end at `to`; what came before says more of the next.
    if (isLast) return { end: y, converged: true, steps, nextStep: Math.max(step, h * factor) };
    step = Math.max(h * factor, SHORTEST * way);
  }
  return { end: y, converged: false, steps: maximumSteps, nextStep: step };
}

/** Slopes of the seven stages; the argument of the last is the fifth-order result and stays in `trial`. */
function takeStages(
  derivative: InitialValueProblem["derivative"],
  x: number,
  h: number,
  y: Float64Array,
  trial: Float64Array,
  k: readonly Float64Array[],
): void {
  for (let stage = 1; stage < STAGES.length; stage++) {
    const row = STAGES[stage]!;
    for (let i = 0; i < y.length; i++) {
      let sum = 0;
      for (let j = 0; j < stage; j++) sum += row[j]! * k[j]![i]!;
      trial[i] = y[i]! + h * sum;
    }
    derivative(x + NODES[stage]! * h, trial, k[stage]!);
  }
}

/** Greatest difference of the two orders over the size of its component. */
function errorOf(k: readonly Float64Array[], h: number, size: Float64Array): number {
  let greatest = 0;
  for (let i = 0; i < size.length; i++) {
    let sum = 0;
    for (let j = 0; j < DIFFERENCE.length; j++) sum += DIFFERENCE[j]! * k[j]![i]!;
    const error = Math.abs(h * sum) / size[i]!;
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

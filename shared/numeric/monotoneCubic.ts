/**
 * Curve through points that overshoots nowhere: between two points it stays between their values, so that a chord between
 * two stations can not turn negative and a row of equal values stays straight.
 *
 * Piecewise cubic Hermite with slopes from the weighted harmonic mean of the neighbouring secants, 0 at a turning point;
 * at the ends a one-sided three-point slope held to the same condition. Outside the points the end value is held.
 *
 * Source   Fritsch & Butland, A method for constructing local monotone piecewise cubic interpolants, SIAM J. Sci. Stat.
 *          Comput. 5 (1984) 300; end slopes Moler, Numerical Computing with MATLAB (2004), ch. 3 (pchip).
 * Range    x strictly increasing, one point or more, as many y; the caller has checked that.
 *
 * @example monotoneCubic([0, 1, 2], [0, 1, 1])(0.5) // 0.6875
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): (at: number) => number {
  const slopes = slopesOf(x, y);
  const last = x.length - 1;
  return (at) => {
    if (at <= x[0]!) return y[0]!;
    if (at >= x[last]!) return y[last]!;
    const i = intervalOf(x, at);
    const h = x[i + 1]! - x[i]!;
    const u = (at - x[i]!) / h;
    const v = 1 - u;
    return (
      y[i]! * v * v * (1 + 2 * u) + y[i + 1]! * u * u * (1 + 2 * v) + h * u * v * (slopes[i]! * v - slopes[i + 1]! * u)
    );
  };
}

/** Index of the last point not above `at`, by bisection. */
function intervalOf(x: readonly number[], at: number): number {
  let [low, high] = [0, x.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (x[middle]! <= at) low = middle;
    else high = middle;
  }
  return low;
}

function slopesOf(x: readonly number[], y: readonly number[]): number[] {
  if (x.length === 1) return [0];
  const steps = x.slice(1).map((right, i) => right - x[i]!);
  const secants = steps.map((step, i) => (y[i + 1]! - y[i]!) / step);
  if (secants.length === 1) return [secants[0]!, secants[0]!];
  const inner = secants.slice(1).map((right, i) => innerSlope(secants[i]!, right, steps[i]!, steps[i + 1]!));
  const n = secants.length;
  return [
    endSlope(steps[0]!, steps[1]!, secants[0]!, secants[1]!),
    ...inner,
    endSlope(steps[n - 1]!, steps[n - 2]!, secants[n - 1]!, secants[n - 2]!),
  ];
}

function innerSlope(left: number, right: number, leftStep: number, rightStep: number): number {
  if (left * right <= 0) return 0;
  const [w1, w2] = [2 * rightStep + leftStep, rightStep + 2 * leftStep];
  return (w1 + w2) / (w1 / left + w2 / right);
}

function endSlope(step: number, nextStep: number, secant: number, nextSecant: number): number {
  const slope = ((2 * step + nextStep) * secant - step * nextSecant) / (step + nextStep);
  if (Math.sign(slope) !== Math.sign(secant)) return 0;
  const turns = Math.sign(secant) !== Math.sign(nextSecant);
  return turns && Math.abs(slope) > 3 * Math.abs(secant) ? 3 * secant : slope;
}

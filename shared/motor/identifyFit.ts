import type { MotorIdentificationRequest, MotorResidual } from "../model/motorIdentification.ts";
import { type LeastSquaresFit, leastSquares } from "../numeric/leastSquares.ts";
import { InputProblem, OutOfDomain } from "../quantity/problem.ts";
import {
  type BalancedPoint,
  balancedPoint,
  corrected,
  differences,
  type MotorUnknowns,
  ownUncertainty,
  whitened,
} from "./identifyEquations.ts";
import type { UnknownName, UnknownPlan } from "./identifyUnknowns.ts";

/** The unknowns of a motor with all that is known of their doubt. */
export interface MotorFit {
  readonly unknowns: MotorUnknowns;
  readonly free: readonly UnknownName[];
  /** Covariance of the free unknowns, in their order. */
  readonly covariance: readonly (readonly number[])[];
  /** For coverage factors; infinite where the stated uncertainties of the readings were enough. */
  readonly coverageDegreesOfFreedom: number;
  readonly degreesOfFreedom: number;
  readonly chiSquared: number;
  readonly scatterRatio: number;
  /** The readings came with uncertainties of their own. */
  readonly weighted: boolean;
  readonly converged: boolean;
  readonly residuals: readonly MotorResidual[];
}

/** Fits what `plan` leaves open. Throws InputProblem `motor.too-few-points` or `motor.can-not-tell-apart`. */
export function fitMotor(request: MotorIdentificationRequest, plan: UnknownPlan): MotorFit {
  const weighted = isWeighted(request);
  const points = request.points.flatMap((reading, index) => {
    const point = balancedPoint(reading, index, { ...plan, weighted });
    return point.equations.length > 0 ? [point] : [];
  });
  requireUncertainties(points);
  const equations = points.reduce((sum, { equations: own }) => sum + own.length, 0);
  const degreesOfFreedom = equations + plan.beliefs.length - plan.free.length;
  if (degreesOfFreedom < (weighted ? 0 : 1)) throw tooFewPoints(equations, plan.free.length, weighted);
  const first = solved(points, request, plan, 1);
  const ofReadings = first.fit.residuals.slice(0, equations).reduce((sum, r) => sum + r * r, 0);
  // Readings that scatter more than they should widen the answer; where they came without any doubt it is all there is.
  const scatter = degreesOfFreedom > 0 ? Math.sqrt(ofReadings / degreesOfFreedom) : 1;
  const scatterRatio = weighted ? Math.max(1, scatter) : scatter;
  const last = scatterRatio === 1 || scatterRatio === 0 ? first : solved(points, request, plan, scatterRatio);
  return {
    ...last,
    free: plan.free,
    covariance: last.fit.covariance.slice(0, plan.free.length).map((row) => row.slice(0, plan.free.length)),
    coverageDegreesOfFreedom: weighted && scatter <= 1 ? Infinity : degreesOfFreedom,
    degreesOfFreedom,
    chiSquared: ofReadings,
    scatterRatio,
    weighted,
    converged: last.fit.converged,
    residuals: residualsOf(points, request, plan, last),
  };
}

interface Solved {
  readonly unknowns: MotorUnknowns;
  readonly sizes: readonly number[];
  readonly fit: LeastSquaresFit;
}

/** Unknowns and shared errors together: an error of a meter is an unknown that is believed to be 0 ± 1 of its doubt. */
function solved(
  points: readonly BalancedPoint[],
  { shared }: MotorIdentificationRequest,
  plan: UnknownPlan,
  widening: number,
): Solved {
  const { free, start, beliefs, referenceSpeed } = plan;
  const unknownsOf = (x: readonly number[]): MotorUnknowns => {
    const found = { ...start, ...Object.fromEntries(free.map((name, i) => [name, x[i]!])) };
    return free.includes("torqueConstantOfLoad") ? found : { ...found, torqueConstantOfLoad: found.torqueConstant };
  };
  const residuals = (x: readonly number[]) => {
    const unknowns = unknownsOf(x);
    const sizes = x.slice(free.length);
    return [
      ...points.flatMap((point) =>
        whitened(point, corrected(point, shared, sizes), unknowns, referenceSpeed).map((r) => r / widening),
      ),
      ...beliefs.map(({ of, value, standardUncertainty }) => (unknowns[of] - value) / standardUncertainty),
      ...sizes,
    ];
  };
  const zeros = shared.map(() => 0);
  const fit = tellingApart(() =>
    leastSquares({
      start: [...free.map((name) => start[name]), ...zeros],
      scales: [...free.map((name) => SCALES[name](start)), ...shared.map(() => 1)],
      residuals,
    }),
  );
  return { unknowns: unknownsOf(fit.solution), sizes: fit.solution.slice(free.length), fit };
}

/** Typical sizes, for steps: a resistance or slope of nearly 0 still has one. */
const SCALES: { readonly [N in UnknownName]: (start: MotorUnknowns) => number } = {
  torqueConstant: ({ torqueConstant }) => torqueConstant,
  torqueConstantOfLoad: ({ torqueConstant }) => torqueConstant,
  pathResistance: ({ pathResistance }) => Math.max(Math.abs(pathResistance), 0.01),
  noLoadCurrent: ({ noLoadCurrent }) => Math.max(Math.abs(noLoadCurrent), 0.05),
  noLoadCurrentSlope: ({ noLoadCurrentSlope }) => Math.max(Math.abs(noLoadCurrentSlope), 1e-4),
  wetTorque: ({ wetTorque }) => wetTorque,
  wetExponent: () => 1,
};

function residualsOf(
  points: readonly BalancedPoint[],
  { shared }: MotorIdentificationRequest,
  { referenceSpeed }: UnknownPlan,
  { unknowns, sizes }: Solved,
): MotorResidual[] {
  return points.flatMap((point) => {
    const values = corrected(point, shared, sizes);
    const doubts = ownUncertainty(point, values, unknowns, referenceSpeed);
    return differences(point, values, unknowns, referenceSpeed).map((difference, i) => ({
      point: point.index,
      name: point.reading.name,
      equation: point.equations[i]!,
      rotationRate: point.reading.rotationRate,
      difference,
      residual: difference / doubts[i]!,
    }));
  });
}

function isWeighted({ points }: MotorIdentificationRequest): boolean {
  return points.some((point) => DOUBTS.some((key) => point[key] !== undefined));
}

const DOUBTS = ["voltageUncertainty", "currentUncertainty", "rotationRateUncertainty", "torqueUncertainty"] as const;

function requireUncertainties(points: readonly BalancedPoint[]): void {
  const bare = points.find(({ uncertainty }) => !uncertainty.slice(0, 3).some((u) => u > 0));
  if (!bare) return;
  throw new InputProblem({
    code: "motor.uncertainty-missing",
    where: `points[${bare.index}]`,
    found: "This point has no uncertainty while others have",
    needed: "standard uncertainties of voltage, current and rotation rate at every point, or at none",
    mend: "Add them, or leave all of them away: then the scatter of the points tells",
  });
}

function tellingApart<T>(work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    if (!(thrown instanceof OutOfDomain) || thrown.problem.code !== "numeric.least-squares") throw thrown;
    throw new InputProblem({
      code: "motor.can-not-tell-apart",
      where: "points",
      found: `The points leave the constants open: ${thrown.problem.found}`,
      needed: "runs that differ in speed and load: without propeller and loaded, at several throttles",
      mend: "Add such a run, or state what is known from elsewhere",
    });
  }
}

function tooFewPoints(equations: number, unknowns: number, weighted: boolean): InputProblem {
  return new InputProblem({
    code: "motor.too-few-points",
    where: "points",
    found: `The points give ${equations} balances for ${unknowns} unknown constants`,
    needed: weighted
      ? "as many as there are constants"
      : "more than there are constants, or the uncertainties of the readings: the scatter is all that shows their doubt",
    mend: "Add points, state a constant that is known, or give the uncertainties of the readings",
  });
}

import { lineThroughOrigin } from "../numeric/lineThroughOrigin.ts";
import { bracketedRoot } from "../numeric/rootFinding.ts";
import { type FitPoint, fitThroughOrigin, scattersMore, weighingUncertainty } from "./coefficientFit.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import { unseenZero, zeroLine } from "./unseenZero.ts";

/** Difference of log-likelihoods from which on another cause is taken: a spread judged as something else would get too little. */
const CLEARLY = 3;
/** Fewest plateaus whose spread can be told from the doubts of their readings. */
const FEWEST_POINTS = 3;

/**
 * Plateaus with what they scatter by beyond the doubts of their readings, in thrust and in power. Flow in the tank, friction
 * and the grip of the propeller make plateaus differ by a part of their thrust that no reading within them shows; weighed by
 * its readings alone the fastest plateau would then rule the fit, and the slow ones would seem to lie off.
 */
export function withSpread(plateaus: readonly JudgedPlateau[], singleReadings: boolean): JudgedPlateau[] {
  if (singleReadings) return [...plateaus];
  const thrusts = spreadPoints(plateaus.map(({ thrustPoint }) => thrustPoint));
  const known = plateaus.flatMap(({ powerPoint }) => powerPoint ?? []);
  const powers = new Map(spreadPoints(known).map((point, i) => [known[i]!, point]));
  return plateaus.map((plateau, i) => ({
    ...plateau,
    thrustPoint: thrusts[i]!,
    powerPoint: plateau.powerPoint && powers.get(plateau.powerPoint)!,
  }));
}

/**
 * The same part of y for all points that makes their scatter what their doubts explain; none where they explain it already,
 * where a zero that is off does, or where doubts that are all too small by one factor are likelier.
 *
 * Source   Paule & Mandel, Journal of Research of the NBS 87 (1982) 377, with the spread in proportion to the thrust.
 */
export function spreadPoints(points: readonly FitPoint[]): readonly FitPoint[] {
  if (points.length < FEWEST_POINTS) return points;
  const fit = fitThroughOrigin(points, false);
  const degreesOfFreedom = points.length - 1;
  if (!scattersMore(fit.chiSquared, degreesOfFreedom)) return points;
  const over = (part: number) => lineWith(points, part, fit.coefficient).chiSquared - degreesOfFreedom;
  const most = 10 * Math.hypot(...points.map(({ x, y }) => y / (fit.coefficient * x) - 1));
  if (over(most) > 0) return points;
  const { root, converged } = bracketedRoot(over, 0, most, { relativeTolerance: 1e-12, maximumSteps: 200 });
  const likelihood = (K: number, factor: number, part: number) =>
    logLikelihood(points, { slope: K, intercept: 0, factor, spread: part * fit.coefficient });
  const byReadings = likelihood(fit.coefficient, fit.chiSquared / degreesOfFreedom, 0);
  const bySpread = likelihood(lineWith(points, root, fit.coefficient).slope, 1, root);
  if (!converged || byReadings > bySpread + CLEARLY) return points;
  if (unseenZero(points, fit) !== null && byZero(points) > bySpread + CLEARLY) return points;
  return points.map((point) => ({
    ...point,
    spread: { uncertainty: Math.abs(root * fit.coefficient * point.x), degreesOfFreedom },
  }));
}

/** `K`: coefficient that the spread is a part of; near enough, and the same for all parts. */
function lineWith(points: readonly FitPoint[], part: number, K: number) {
  return lineThroughOrigin({
    x: points.map(({ x }) => x),
    y: points.map(({ y }) => y),
    uncertaintyX: points.map(({ roundingX }) => roundingX),
    uncertaintyY: points.map((point) => Math.hypot(weighingUncertainty(point), part * K * point.x)),
  });
}

function byZero(points: readonly FitPoint[]): number {
  const line = zeroLine(points);
  return logLikelihood(points, { ...line, factor: line.chiSquared / line.degreesOfFreedom, spread: 0 });
}

interface Spread {
  readonly slope: number;
  readonly intercept: number;
  /** Factor on the variances of the readings. */
  readonly factor: number;
  /** Of y over x. */
  readonly spread: number;
}

/** Of normal errors about a line, but for a constant. */
function logLikelihood(points: readonly FitPoint[], { slope, intercept, factor, spread }: Spread): number {
  return points.reduce((sum, point) => {
    const own = weighingUncertainty(point) ** 2 + (slope * point.roundingX) ** 2;
    const variance = factor * own + (spread * point.x) ** 2;
    return sum - 0.5 * (Math.log(variance) + (point.y - intercept - slope * point.x) ** 2 / variance);
  }, 0);
}

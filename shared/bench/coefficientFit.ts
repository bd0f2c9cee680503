import { chiSquareUpperTail } from "../numeric/chiSquare.ts";
import { combined, judgedTogether, known } from "../numeric/combined.ts";
import { lineThroughOrigin } from "../numeric/lineThroughOrigin.ts";
import type { UncertaintyPart } from "../numeric/welchSatterthwaite.ts";
import type { TareAt } from "./tareLine.ts";

/** One plateau on the way to a coefficient: y = K x, x = ρ n^p D^q. */
export interface FitPoint {
  readonly x: number;
  readonly y: number;
  /** Scatter of y with that of the rotation rate allowed for, unit of y. */
  readonly scatter: number;
  readonly scatterDegreesOfFreedom: number;
  /** Of what the scatters of all points share. */
  readonly scatterCommonDegreesOfFreedom?: number | undefined;
  /** Rounding of y, unit of y. */
  readonly rounding: number;
  /** What no stand repeats better than, unit of y; see `repeatabilityOf`. */
  readonly repeatability: number;
  /** What the plateaus of this run scatter by beyond all that, unit of y; absent where their doubts explain their scatter. */
  readonly spread?: { readonly uncertainty: number; readonly degreesOfFreedom: number };
  /** Rounding of x because the rotation rate comes in steps, unit of x. */
  readonly roundingX: number;
  /** Tare taken off, and change of y by a change of the tare. */
  readonly tare: TareAt | null;
  readonly perTare: number;
  /** Standard uncertainty of the tare, unit of y. */
  readonly tareUncertainty: number;
}

/** Fit before what all plateaus share is added. */
export interface OriginFit {
  readonly coefficient: number;
  /** Change of the coefficient by a change of each y. */
  readonly influences: readonly number[];
  /** Standard uncertainty from what differs between the points, widened. */
  readonly independent: number;
  readonly degreesOfFreedom: number;
  /** Of the distances from the line in the points' own doubts, the spread among plateaus apart. */
  readonly chiSquared: number;
  /** Uncertainty by what the own doubts promise. */
  readonly scatterRatio: number;
  /** Distances from the line in standard uncertainties, the spread among plateaus apart. */
  readonly residuals: readonly number[];
  readonly converged: boolean;
}

/** No home-made stand repeats better than this part of its reading; keeps one lucky plateau from ruling the fit. */
const BEST_REPEATABILITY = 1e-4;

/** Part of itself that a point leaves free at least; one that carries the whole line shows no scatter. */
const LEAST_FREEDOM = 1e-3;

/** Best repeatability of a reading `y` on a stand whose greatest reading in the run is `greatest`, unit of y. */
export function repeatabilityOf(y: number, greatest: number): number {
  return BEST_REPEATABILITY * Math.max(Math.abs(y), BEST_REPEATABILITY * greatest);
}

/** Standard uncertainty of y that the readings of the plateau explain, with its tare, which weighs slow plateaus down. */
export function weighingUncertainty({ scatter, rounding, repeatability, tareUncertainty }: FitPoint): number {
  return Math.hypot(scatter, rounding, repeatability, tareUncertainty);
}

/** The point with nothing but what its readings explain. */
export const withoutSpread = ({ spread: _, ...point }: FitPoint): FitPoint => point;

/** The same with what the plateaus scatter by beyond it: what a fit weighs by. */
export function fittingUncertainty(point: FitPoint): number {
  return Math.hypot(weighingUncertainty(point), point.spread?.uncertainty ?? 0);
}

/**
 * Independent doubts of a number that changes by `pulls` with each y, from what differs between the points; `slope`: change
 * of y by x. Scatters are judged by one estimate, and so are spreads.
 */
export function pointParts(points: readonly FitPoint[], pulls: readonly number[], slope: number): UncertaintyPart[] {
  return [...readingParts(points, pulls, slope), spreadPart(points, pulls)];
}

function readingParts(points: readonly FitPoint[], pulls: readonly number[], slope: number): UncertaintyPart[] {
  const scatters = points.map((point, i) => ({
    standardUncertainty: Math.abs(pulls[i]! * point.scatter),
    degreesOfFreedom: point.scatterDegreesOfFreedom,
    commonDegreesOfFreedom: point.scatterCommonDegreesOfFreedom,
  }));
  const others = points.map(({ rounding, repeatability, roundingX }, i) =>
    Math.hypot(pulls[i]! * rounding, pulls[i]! * repeatability, pulls[i]! * slope * roundingX),
  );
  return [judgedTogether(scatters), ...known(...others)];
}

function spreadPart(points: readonly FitPoint[], pulls: readonly number[]): UncertaintyPart {
  return judgedTogether(
    points.map(({ spread }, i) => ({
      standardUncertainty: Math.abs(pulls[i]!) * (spread?.uncertainty ?? 0),
      degreesOfFreedom: spread?.degreesOfFreedom ?? Infinity,
    })),
  );
}

/**
 * Weighted line through the origin with doubt in both, widened where the points scatter more than their doubts explain.
 * `singleReadings`: the points are readings without spread, whose doubts are lower bounds only.
 *
 * Source   Birge, Physical Review 40 (1932) 207 for the widening; degrees of freedom JCGM 100:2008, G.4.
 */
export function fitThroughOrigin(points: readonly FitPoint[], singleReadings: boolean): OriginFit {
  const x = points.map((point) => point.x);
  const y = points.map((point) => point.y);
  const ux = points.map((point) => point.roundingX);
  const uy = points.map(fittingUncertainty);
  const line = lineThroughOrigin({ x, y, uncertaintyX: ux, uncertaintyY: uy });
  const K = line.slope;
  const weights = points.map((_, i) => 1 / (uy[i]! ** 2 + (K * ux[i]!) ** 2));
  const information = x.reduce((sum, xi, i) => sum + weights[i]! * xi * xi, 0);
  const influences = x.map((xi, i) => (weights[i]! * xi) / information);
  const all = combined(pointParts(points, influences, K));
  const seen = singleReadings ? scatterSeen(points, influences, K) : 0;
  const widening = wideningOf(line.chiSquared, line.degreesOfFreedom, all.degreesOfFreedom, singleReadings);
  const independent = Math.max(all.standardUncertainty * widening.ratio, seen);
  const residuals = residualsOf(points, K);
  return {
    coefficient: K,
    influences,
    independent,
    degreesOfFreedom: widening.degreesOfFreedom,
    chiSquared: residuals.reduce((sum, residual) => sum + residual ** 2, 0),
    scatterRatio: independent / combined(readingParts(points, influences, K)).standardUncertainty,
    residuals,
    converged: line.converged,
  };
}

/** Distances (y − K x)/u of the points from the line of slope `K`, in the standard uncertainties of their readings, 1. */
export function residualsOf(points: readonly FitPoint[], K: number): number[] {
  return points.map((point) => (point.y - K * point.x) / Math.hypot(weighingUncertainty(point), K * point.roundingX));
}

/**
 * Standard uncertainty of the coefficient from the residuals themselves. The step of a scale is the same at all thrusts
 * while readings by hand scatter more where the thrust is greater: widening all doubts by one factor would then give
 * the fastest rows too little, and they weigh most.
 *
 * Source   MacKinnon & White, Journal of Econometrics 29 (1985) 305 (HC3).
 */
function scatterSeen(points: readonly FitPoint[], influences: readonly number[], K: number): number {
  if (points.length < 2) return 0;
  return Math.hypot(
    ...points.map(({ x, y }, i) => (influences[i]! * (y - K * x)) / Math.max(1 - influences[i]! * x, LEAST_FREEDOM)),
  );
}

/** Chance below which points are taken to scatter more than their doubts explain. */
const TOO_RARE = 0.05;

/**
 * Factor on the promised uncertainty, and the degrees of freedom that go with it. Where the scatter rules, they are
 * those of the scatter; where the points agree within their doubts, the doubts' own.
 */
export function wideningOf(chiSquared: number, degreesOfFreedom: number, promised: number, singleReadings: boolean) {
  if (degreesOfFreedom < 1) return { ratio: 1, degreesOfFreedom: promised };
  const ratio = Math.max(1, Math.sqrt(chiSquared / degreesOfFreedom));
  if (singleReadings || scattersMore(chiSquared, degreesOfFreedom)) return { ratio, degreesOfFreedom };
  return { ratio: 1, degreesOfFreedom: Math.max(promised, degreesOfFreedom) };
}

/** Whether points scatter more than their doubts explain by other than chance. */
export function scattersMore(chiSquared: number, degreesOfFreedom: number): boolean {
  return chiSquareUpperTail(chiSquared, degreesOfFreedom) < TOO_RARE;
}

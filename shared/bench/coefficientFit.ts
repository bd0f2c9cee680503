import { chiSquareUpperTail } from "../numeric/chiSquare.ts";
import { lineThroughOrigin } from "../numeric/lineThroughOrigin.ts";
import { effectiveDegreesOfFreedom } from "../numeric/welchSatterthwaite.ts";
import type { TareAt } from "./tareLine.ts";

/** One plateau on the way to a coefficient: y = K x, x = ρ n^p D^q. */
export interface FitPoint {
  readonly x: number;
  readonly y: number;
  /** Scatter of y with that of the rotation rate allowed for, unit of y. */
  readonly scatter: number;
  readonly scatterDegreesOfFreedom: number;
  /** Rounding of y, unit of y. */
  readonly rounding: number;
  /** What no stand repeats better than, unit of y; see `repeatabilityOf`. */
  readonly repeatability: number;
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
  readonly chiSquared: number;
  readonly scatterRatio: number;
  /** Distances from the line in standard uncertainties. */
  readonly residuals: readonly number[];
  readonly converged: boolean;
}

/** No home-made stand repeats better than this part of its reading; keeps one lucky plateau from ruling the fit. */
const BEST_REPEATABILITY = 1e-4;

/** Standard uncertainty of y that the plateau brings by itself, unit of y. */
function pointUncertainty({ scatter, rounding, repeatability }: FitPoint): number {
  return Math.hypot(scatter, rounding, repeatability);
}

/** Part of itself that a point leaves free at least; one that carries the whole line shows no scatter. */
const LEAST_FREEDOM = 1e-3;

/** Best repeatability of a reading `y` on a stand whose greatest reading in the run is `greatest`, unit of y. */
export function repeatabilityOf(y: number, greatest: number): number {
  return BEST_REPEATABILITY * Math.max(Math.abs(y), BEST_REPEATABILITY * greatest);
}

/** The same with the tare, which weighs slow plateaus down. */
export function weighingUncertainty(point: FitPoint): number {
  return Math.hypot(pointUncertainty(point), point.tareUncertainty);
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
  const uy = points.map(weighingUncertainty);
  const line = lineThroughOrigin({ x, y, uncertaintyX: ux, uncertaintyY: uy });
  const K = line.slope;
  const weights = points.map((_, i) => 1 / (uy[i]! ** 2 + (K * ux[i]!) ** 2));
  const information = x.reduce((sum, xi, i) => sum + weights[i]! * xi * xi, 0);
  const influences = x.map((xi, i) => (weights[i]! * xi) / information);
  const parts = points.flatMap((point, i) => [
    { standardUncertainty: influences[i]! * point.scatter, degreesOfFreedom: point.scatterDegreesOfFreedom },
    {
      standardUncertainty: influences[i]! * Math.hypot(point.rounding, point.repeatability, K * point.roundingX),
      degreesOfFreedom: Infinity,
    },
  ]);
  const promised = Math.hypot(...parts.map((part) => part.standardUncertainty));
  const seen = singleReadings ? scatterSeen(points, influences, K) : 0;
  const widening = wideningOf(line.chiSquared, line.degreesOfFreedom, effectiveDegreesOfFreedom(parts), singleReadings);
  return {
    coefficient: K,
    influences,
    independent: Math.max(promised * widening.ratio, seen),
    degreesOfFreedom: widening.degreesOfFreedom,
    chiSquared: line.chiSquared,
    scatterRatio: Math.max(widening.ratio, seen / promised),
    residuals: line.residuals,
    converged: line.converged,
  };
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
  const scatterRules = singleReadings || chiSquareUpperTail(chiSquared, degreesOfFreedom) < TOO_RARE;
  return { ratio, degreesOfFreedom: scatterRules ? degreesOfFreedom : Math.max(promised, degreesOfFreedom) };
}

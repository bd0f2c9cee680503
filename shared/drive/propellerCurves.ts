import type { AdvanceFit } from "../model/advance.ts";
import type { OpenWater, PropellerCurve } from "../model/drivePropeller.ts";
import { polynomialFit } from "../numeric/polynomialFit.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../propeller/coefficients.ts";
import { firstZero } from "../propeller/firstZero.ts";
import { polynomialsAt } from "../propeller/series/openWaterOfSeries.ts";
import { coefficientAt } from "../propeller/series/pitchPlane.ts";
import { requireCurve } from "../propeller/series/seriesCurve.ts";
import { type SeriesState, seriesWarnings } from "../propeller/series/seriesRange.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import type { CoefficientPair } from "./coefficientPair.ts";

/** A curve with what a reader must know of it. */
export interface ToldCurve {
  readonly curve: PropellerCurve;
  readonly warnings: readonly Warning[];
}

/** How well the fit of a series gives its tests, of the coefficient at rest. Common practice, no source. */
const SERIES_DOUBT = 0.01;

/**
 * Curve of measured coefficients at rest, with the change with speed of a run at speed where there is one.
 *
 * The measured curves are scaled by one factor each to pass through the coefficients at rest, so that the advance ratio at
 * which the thrust ends stays. Without a curve of the shaft power the change with speed is not known.
 *
 * Source   K_T(J), K_Q(J) = C_P(J)/2π of the run (`AdvanceFit`).
 */
export function measuredCurve(pair: CoefficientPair, advance: AdvanceFit | null = null): PropellerCurve {
  const atRest = { ...pair };
  if (advance === null || advance.powerCurve === null) return atRest;
  const thrust = advance.thrustCurve.coefficients;
  const torque = advance.powerCurve.coefficients.map((c) => c * TORQUE_OVER_POWER_COEFFICIENT);
  return { ...atRest, openWater: scaledToRest({ thrust, torque, end: advance.range[1] }, pair) };
}

/**
 * Measured coefficients at rest with the change with speed of another curve, a series or blade elements, scaled to pass
 * through them.
 *
 * Source   similarity of curves of one family; e.g. Carlton, Marine Propellers and Propulsion, ch. 6.
 * Returns  the coefficients at rest alone where the other curve is known at rest only.
 */
export function withShapeOf(
  pair: CoefficientPair,
  { thrustCoefficient, torqueCoefficient, openWater }: PropellerCurve,
) {
  if (openWater === undefined) return { ...pair };
  const shape = {
    thrust: [thrustCoefficient.value, ...openWater.thrust],
    torque: [torqueCoefficient.value, ...openWater.torque],
    end: openWater.greatestAdvanceRatio,
  };
  return { ...pair, openWater: scaledToRest(shape, pair) };
}

interface Shape {
  /** Coefficients of 1, J, J² and so on. */ readonly thrust: readonly number[];
  readonly torque: readonly number[];
  /** Greatest advance ratio. */ readonly end: number;
}

function scaledToRest({ thrust, torque, end }: Shape, pair: CoefficientPair): OpenWater {
  const scaledBy = (curve: readonly number[], atRest: number, which: string) => {
    const first = curve[0]!;
    if (!(first > 0)) throw notPushing(which, first);
    return curve.slice(1).map((c) => (c * atRest) / first);
  };
  return {
    thrust: scaledBy(thrust, pair.thrustCoefficient.value, "thrust"),
    torque: scaledBy(torque, pair.torqueCoefficient.value, "torque"),
    greatestAdvanceRatio: end,
  };
}

/**
 * Curve of a propeller of a published series up to where its thrust ends; the polynomials are those of the series.
 *
 * Source, range as `openWaterOfSeries`.
 * Error    1 % of the coefficients at rest (the fit; common practice, no source); that a small propeller is less good is
 *          said in a warning, not in the doubt.
 * Throws   OutOfDomain as `openWaterOfSeries` and `seriesCurve`.
 */
export function seriesPropellerCurve(state: SeriesState): ToldCurve {
  const warnings = seriesWarnings(state);
  const polynomials = polynomialsAt(state);
  const greatestAdvanceRatio = requireCurve(polynomials);
  const [K_T, K_Q] = [coefficientAt(polynomials.thrust, 0), coefficientAt(polynomials.torque, 0)];
  const curve: PropellerCurve = {
    thrustCoefficient: { value: K_T, standardUncertainty: SERIES_DOUBT * K_T },
    torqueCoefficient: { value: K_Q, standardUncertainty: SERIES_DOUBT * K_Q },
    correlation: 0,
    openWater: {
      thrust: withoutTail([...polynomials.thrust]).slice(1),
      torque: withoutTail([...polynomials.torque]).slice(1),
      greatestAdvanceRatio,
    },
  };
  return { curve, warnings };
}

/** Without the zeros of powers that do not occur. */
function withoutTail(coefficients: number[]): number[] {
  return coefficients.slice(0, coefficients.findLastIndex((c) => c !== 0) + 1);
}

export interface CurvePoint {
  /** J. */ readonly advanceRatio: number;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
}

/** Order of the polynomials that points are told by. */
const POINTS_ORDER = 4;
/** Distance of a point from them, of the coefficient at rest, that is told. */
const GOOD_FIT = 0.02;

/**
 * Curve through computed points, such as those of blade elements, by polynomials of order 4 in J.
 *
 * Source   least squares, `polynomialFit`; blade elements as `bladeElements`.
 * Range    five points or more from J = 0 up.
 * Error    what the polynomials miss is told where it passes 2 % of the coefficient at rest; `relativeUncertainty` is the
 *          doubt of the points themselves, of both coefficients: for slender smooth blades 6 % (`bladeElements`).
 * Throws   OutOfDomain `drive.curve-points` for fewer points or such that do not begin near rest, `drive.curve-not-pushing`.
 */
export function curveThroughPoints(points: readonly CurvePoint[], relativeUncertainty: number): ToldCurve {
  requirePoints(points);
  const x = points.map(({ advanceRatio }) => advanceRatio);
  const fitted = (key: "thrustCoefficient" | "torqueCoefficient") =>
    polynomialFit({ x, y: points.map((point) => point[key]), order: POINTS_ORDER });
  const [thrust, torque] = [fitted("thrustCoefficient"), fitted("torqueCoefficient")];
  const [K_T, K_Q] = [thrust.coefficients[0]!, torque.coefficients[0]!];
  if (!(K_T > 0)) throw notPushing("thrust", K_T);
  if (!(K_Q > 0)) throw notPushing("torque", K_Q);
  const end = Math.max(...x);
  const zero = firstZero(thrust.at);
  const curve: PropellerCurve = {
    thrustCoefficient: { value: K_T, standardUncertainty: relativeUncertainty * K_T },
    torqueCoefficient: { value: K_Q, standardUncertainty: relativeUncertainty * K_Q },
    correlation: 0,
    openWater: {
      thrust: thrust.coefficients.slice(1),
      torque: torque.coefficients.slice(1),
      greatestAdvanceRatio: zero === null ? end : Math.min(zero, end),
    },
  };
  const missed = Math.max(
    ...thrust.residuals.map((r) => Math.abs(r / K_T)),
    ...torque.residuals.map((r) => Math.abs(r / K_Q)),
  );
  return { curve, warnings: missed > GOOD_FIT ? [roughFit(missed)] : [] };
}

/** Advance ratio at which points must have begun. */
const NEAR_REST = 0.05;

function requirePoints(points: readonly CurvePoint[]): void {
  const different = new Set(points.map(({ advanceRatio }) => advanceRatio)).size;
  const least = Math.min(...points.map(({ advanceRatio }) => advanceRatio));
  if (different > POINTS_ORDER && Math.abs(least) <= NEAR_REST) return;
  throw new OutOfDomain({
    code: "drive.curve-points",
    where: "points",
    found: `${different} advance ratios${different > 0 ? ` from ${formatNumber(least)} up` : ""}`,
    needed: `${POINTS_ORDER + 1} or more, the least within ${NEAR_REST} of rest`,
    mend: "Compute more points, beginning at rest",
  });
}

function notPushing(which: string, value: number): OutOfDomain {
  return new OutOfDomain({
    code: "drive.curve-not-pushing",
    where: "propeller",
    found: `The ${which} coefficient of the curve at rest is ${formatNumber(value)}`,
    needed: "more than 0",
    mend: "Check the direction of turning and the sign of the coefficients",
  });
}

function roughFit(missed: number): Warning {
  return warning({
    code: "drive.curve-rough-fit",
    where: "propeller",
    found: `The polynomials of order ${POINTS_ORDER} miss a point by ${formatNumber(100 * missed, 2)} % of the coefficient at rest`,
    needed: `at most ${100 * GOOD_FIT} %`,
    mend: "Take numbers at speed as rough, or leave out points far beyond where the thrust ends",
  });
}

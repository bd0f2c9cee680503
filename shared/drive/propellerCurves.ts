import type { AdvanceFit } from "../model/advance.ts";
import type { OpenWater, PropellerCurve } from "../model/drivePropeller.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../propeller/coefficients.ts";
import { polynomialsAt } from "../propeller/series/openWaterOfSeries.ts";
import { coefficientAt } from "../propeller/series/pitchPlane.ts";
import { requireCurve } from "../propeller/series/seriesCurve.ts";
import { type SeriesState, seriesWarnings } from "../propeller/series/seriesRange.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import type { Warning } from "../quantity/warning.ts";
import type { CoefficientPair } from "./coefficientPair.ts";
import { asYardstick } from "./seriesDoubt.ts";

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
 * Error    1 % of the coefficients at rest (the fit; common practice, no source), and what a small propeller may lose, as
 *          `asYardstick`; the numbers stay those of the series.
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
  return { curve: asYardstick(curve), warnings };
}

/** Without the zeros of powers that do not occur. */
function withoutTail(coefficients: number[]): number[] {
  return coefficients.slice(0, coefficients.findLastIndex((c) => c !== 0) + 1);
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

import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FinishFitRequest } from "../../model/finishFit.ts";
import { LossCause, type LossReport, type LossReportRequest } from "../../model/lossReport.ts";
import { formatNumber, formatUncertain } from "../../quantity/format.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import type { BladeAnswer } from "../finish/bladeResponse.ts";
import { bladesInHand } from "../finish/bladesInHand.ts";
import { fromAnswer } from "../finish/derived.ts";
import { type FinishSides, finishSides, isFitted } from "../finish/finishSide.ts";
import { jointDoubt } from "../finish/jointDoubt.ts";
import type { InFluid } from "../inFluid.ts";
import { comparableSeries } from "../series/comparableSeries.ts";
import { openWaterOfSeries } from "../series/openWaterOfSeries.ts";
import { staticMerit } from "../staticMerit.ts";
import { longReport, shortReport } from "./lossInWords.ts";
import { seriesName } from "./seriesName.ts";

/** Relative standard uncertainty of a predicted loss that was only scaled to the measurement. Common practice, no source. */
const SCALED_DOUBT = 0.3;

/**
 * How far a measured propeller is from ideal and from a good one at bollard, and where its shaft power goes.
 *
 *   FM = K_T^(3/2)/(C_P sqrt(π/2)),   T/T_max = FM^(2/3),   T/T_s at equal power = (FM/FM_s)^(2/3)
 *
 * The losses have the proportions of blade elements whose surface was fitted so that they make the measured thrust and
 * torque, or comes nearest where no surface does; together they are what the measured merit leaves.
 *
 * Source   momentum theory (`staticMerit`); power account of `bladeElements`; uncertainty JCGM 100:2008, 5.2.
 * Throws   as `finishFit`.
 */
export function lossReport(request: InFluid<LossReportRequest>): LossReport {
  const { name } = request;
  const blades = bladesInHand(request);
  const { geometry, model, warnings } = blades;
  const finishes: FinishFitRequest["finishes"] = [{ name, measured: [{ ...request.measured, advanceRatio: 0 }] }];
  const told = finishSides({ ...request, finishes }, blades);
  const merit = request.staticMerit ?? measuredMerit(request.measured);
  const against = seriesComparison(request, geometry, merit);
  const losses = sharesOf(told, merit, model);
  const numbers = {
    staticMerit: merit,
    thrustOverIdeal: thrustOfMerit(merit, 1),
    series: against.series,
    ...losses,
  };
  return {
    ...numbers,
    short: shortReport(name, numbers),
    long: longReport(name, numbers),
    warnings: [
      ...warnings,
      ...against.warnings,
      ...(merit.value >= 1 ? [aboveIdeal(name, merit)] : []),
      ...(losses.sharesFrom === "scaled" ? [scaledOnly(name)] : []),
    ],
  };
}

type Measured = LossReportRequest["measured"];

/**
 * Thrust at equal shaft power over that of another merit, (FM/FM_s)^(2/3): to first order in the doubt, and the ends of
 * the interval go with those of the merit, so that the two tell the same.
 */
function thrustOfMerit({ value, standardUncertainty, interval95 }: Uncertain, other: number): Uncertain {
  const ratioOf = (merit: number) => (Math.max(0, merit) / other) ** (2 / 3);
  const ratio = ratioOf(value);
  return {
    value: ratio,
    standardUncertainty: ((2 / 3) * ratio * standardUncertainty) / value,
    interval95: [ratioOf(interval95[0]), ratioOf(interval95[1])],
  };
}

/** K_T^a K_Q^b of the measurement with its doubt, over the same of other coefficients. */
function productOf(
  { thrustCoefficient: T, torqueCoefficient: Q, correlation }: Measured,
  [a, b]: readonly [number, number],
) {
  const [uT, uQ] = [(a * T.standardUncertainty) / T.value, (b * Q.standardUncertainty) / Q.value];
  const relative = Math.sqrt(uT * uT + uQ * uQ + 2 * correlation * uT * uQ);
  return (value: number) => uncertain(value, Math.abs(value) * relative);
}

const meritOf = ({ thrustCoefficient, torqueCoefficient }: { thrustCoefficient: number; torqueCoefficient: number }) =>
  staticMerit({ thrustCoefficient, powerCoefficient: torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT });

const valuesOf = ({ thrustCoefficient, torqueCoefficient }: Measured) => ({
  thrustCoefficient: thrustCoefficient.value,
  torqueCoefficient: torqueCoefficient.value,
});

const measuredMerit = (measured: Measured) => productOf(measured, [1.5, -1])(meritOf(valuesOf(measured)));

function seriesComparison(
  { series: stated, measured }: Pick<LossReportRequest, "series" | "measured">,
  geometry: BladeGeometry,
  measuredMerit: Uncertain,
): { series: LossReport["series"]; warnings: readonly Warning[] } {
  const series = stated ?? comparableSeries(geometry);
  if (series === null) return { series: null, warnings: [] };
  const good = openWaterOfSeries({ series, advanceRatio: 0, outsideRange: true });
  if (!(good.thrustCoefficient > 0 && good.torqueCoefficient > 0)) return { series: null, warnings: good.warnings };
  const { thrustCoefficient, torqueCoefficient } = valuesOf(measured);
  const merit = meritOf(good);
  const comparison = {
    name: seriesName(series),
    staticMerit: merit,
    thrustRatio: productOf(measured, [1, 0])(thrustCoefficient / good.thrustCoefficient),
    powerRatio: productOf(measured, [0, 1])(torqueCoefficient / good.torqueCoefficient),
    thrustAtEqualPower: thrustOfMerit(measuredMerit, merit),
  };
  return { series: comparison, warnings: good.warnings };
}

const CAUSES = LossCause.options;

function sharesOf(
  { sides, covariance }: FinishSides,
  merit: Uncertain,
  model: LossReportRequest["modelUncertainty"],
): Pick<LossReport, "shares" | "sharesFrom"> {
  const side = sides[0]!;
  // Above the ideal nothing is left to be lost.
  if (side.fit.state === "failed" || merit.value >= 1) return { shares: [], sharesFrom: "none" };
  const shares = isFitted(side)
    ? CAUSES.map((cause) => {
        const doubtOf = jointDoubt({ sides: [side], covariance, model });
        const of = (answer: BladeAnswer) => partOf(answer, cause) * (1 - meritOf(answer.points[0]!));
        return { cause, share: doubtOf(fromAnswer(side.fit, [side.fit], { response: side.response, of })) };
      })
    : scaledShares(side.fit.answer, merit);
  shares.sort((a, b) => b.share.value - a.share.value);
  return { shares, sharesFrom: isFitted(side) ? "fitted" : "scaled" };
}

/** Part that a cause has in all losses. */
const partOf = ({ power }: BladeAnswer, cause: LossCause) =>
  power[cause] / CAUSES.reduce((sum, one) => sum + power[one], 0);

/** Losses in the proportions of an answer, together what the measured merit leaves. */
function scaledShares(answer: BladeAnswer, { value, standardUncertainty }: Uncertain) {
  return CAUSES.map((cause) => {
    const part = partOf(answer, cause);
    const share = part * (1 - value);
    return {
      cause,
      share: uncertain(share, Math.hypot(part * standardUncertainty, SCALED_DOUBT * share * (1 - part))),
    };
  });
}

function aboveIdeal(name: string, merit: Uncertain): Warning {
  return warning({
    code: "propeller.merit-above-ideal",
    where: name,
    found: `A static merit of ${formatUncertain(merit)} is more than an open propeller can have`,
    needed: "less than 1",
    mend: "Check tare, calibration of thrust and torque, rotation rate and diameter; a nozzle would explain it",
  });
}

function scaledOnly(name: string): Warning {
  return warning({
    code: "propeller.loss-scaled",
    where: name,
    found:
      "No surface makes blade elements meet the measured thrust and torque, so the split of the losses is theirs, scaled to the measured merit",
    needed: "a measurement and a blade description that agree",
    mend: `Take the split as a sketch: each part may be off by ${formatNumber(100 * SCALED_DOUBT, 1)} %`,
  });
}

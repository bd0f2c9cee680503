import type { Reduction } from "../../../../shared/model/reduction.ts";
import { powerExtrapolationInWords } from "../../../../shared/propeller/beyondMeasured.ts";
import { idealMerit, limitThrust, thrustOfMerit } from "../../../../shared/propeller/bollardEstimate.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../../../shared/propeller/coefficients.ts";
import { staticMerit as meritOf } from "../../../../shared/propeller/staticMerit.ts";
import { formatQuantity, formatUncertain } from "../../../../shared/quantity/format.ts";
import { scaled, type Uncertain } from "../../../../shared/quantity/uncertain.ts";
import { capitalised } from "../../../app/words.ts";
import { NEWTON, PERCENT, WATT } from "../../bench/shownUnits.ts";
import { type ShownPrediction, shownName } from "../predictions/shownPrediction.ts";
import type { MeasuredVariant, TheoryInputs } from "../theoryModel.ts";

/** Shaft power that sentences and tables are told for, W. */
const REFERENCE_POWER = 100;

type Known = MeasuredVariant & { readonly staticMerit: Uncertain };
const isKnown = (variant: MeasuredVariant): variant is Known =>
  variant.staticMerit !== null && variant.staticMerit.value > 0;

/** The disc that a variant is held against: without the nozzle where its own propeller has none. */
export function discOf({ nozzle }: MeasuredVariant, inputs: TheoryInputs): TheoryInputs {
  return nozzle === false ? { ...inputs, nozzleAreaRatio: null } : inputs;
}

/** The variant that makes the most of its shaft power; null where no shaft power is known. */
export function bestOf(variants: readonly MeasuredVariant[]): Known | null {
  const better = (a: Known, b: Known) => (b.staticMerit.value > a.staticMerit.value ? b : a);
  return variants.filter(isKnown).reduce<Known | null>((best, one) => (best === null ? one : better(best, one)), null);
}

/** "Sanded makes 57 ± 3 % of the ideal power efficiency: ..." with the thrust that means at 100 W. */
export function closeness(best: Known, stated: TheoryInputs): string {
  const { name, staticMerit } = best;
  const inputs = discOf(best, stated);
  const beyond = powerExtrapolationInWords(REFERENCE_POWER, greatestPower(best));
  return (
    `${capitalised(name)} makes ${formatUncertain(shareOfIdeal(staticMerit, inputs), PERCENT)} of the ideal power efficiency: ` +
    `${formatQuantity(REFERENCE_POWER, WATT)} at the shaft push ${formatUncertain(thrustAtReference(staticMerit, inputs), NEWTON)}${beyond === "" ? "" : ` (${beyond})`}, ` +
    `where the ideal pushes ${formatQuantity(limitThrust(REFERENCE_POWER, inputs), NEWTON)}.`
  );
}

/** The same beside the prediction that is laid over; empty where there is nothing to compare. */
export function besidePrediction(best: Known | null, yardstick: ShownPrediction | null, inputs: TheoryInputs): string {
  if (best === null || yardstick === null) return "";
  const [ratio, merit] = [overPrediction(best, yardstick), predictedMerit(best.reductions, yardstick)];
  if (ratio === null || merit === null) return "";
  return (
    `${shownName(yardstick)}, laid over it at equal diameter, would push ` +
    `${formatQuantity(thrustOfMerit(REFERENCE_POWER, merit, inputs), NEWTON)} with that power: ` +
    `${best.name} makes ${formatUncertain(scaled(ratio, 100), PERCENT_OF_NUMBER)} of it.`
  );
}

const PERCENT_OF_NUMBER = { symbol: "%", factor: 1 };

/** One row a variant: share of the ideal, thrust of 100 W, and that thrust over the prediction's. */
export function closenessRows(
  variants: readonly MeasuredVariant[],
  yardstick: ShownPrediction | null,
  inputs: TheoryInputs,
) {
  return variants.map((variant) => {
    const { name, reductions } = variant;
    if (!isKnown(variant)) {
      const why = reductions.length === 0 ? "not reduced yet" : "shaft power not known";
      return { name, cells: [why, "", ""], mountings: reductions.length };
    }
    const ratio = yardstick === null ? null : overPrediction(variant, yardstick);
    return {
      name,
      cells: [
        formatUncertain(shareOfIdeal(variant.staticMerit, discOf(variant, inputs)), PERCENT),
        thrustText(variant, inputs),
        ratio === null ? "" : formatUncertain(ratio, PERCENT),
      ],
      mountings: reductions.length,
    };
  });
}

/** Greatest shaft power that a variant was measured at, W; null where none was. */
function greatestPower({ reductions }: MeasuredVariant): number | null {
  const powers = reductions.flatMap(({ plateaus }) =>
    plateaus.flatMap(({ used, shaftPower }) => (used && shaftPower !== null ? [shaftPower.value] : [])),
  );
  return powers.length === 0 ? null : Math.max(...powers);
}

function thrustText(variant: Known, inputs: TheoryInputs): string {
  const told = formatUncertain(thrustAtReference(variant.staticMerit, inputs), NEWTON);
  const beyond = powerExtrapolationInWords(REFERENCE_POWER, greatestPower(variant));
  return beyond === "" ? told : `${told}, extrapolated`;
}

function shareOfIdeal(merit: Uncertain, inputs: TheoryInputs): Uncertain {
  return scaled(merit, 1 / idealMerit(inputs));
}

function thrustAtReference(merit: Uncertain, inputs: TheoryInputs): Uncertain {
  return raised(merit, (value) => thrustOfMerit(REFERENCE_POWER, value, inputs));
}

/** T/T_p = (FM/FM_p)^(2/3) at equal shaft power, diameter and water. Source: momentum theory, as `thrustFromMerit`. */
function overPrediction({ staticMerit, reductions }: Known, yardstick: ShownPrediction): Uncertain | null {
  const merit = predictedMerit(reductions, yardstick);
  return merit === null ? null : raised(staticMerit, (value) => (value / merit) ** THRUST_BY_MERIT);
}

const THRUST_BY_MERIT = 2 / 3;

/** Something that goes with merit to the power of 2/3; the ends of the interval go with those of the merit. */
function raised({ value, standardUncertainty, interval95: [low, high] }: Uncertain, of: (merit: number) => number) {
  const middle = of(value);
  return {
    value: middle,
    standardUncertainty: (THRUST_BY_MERIT * middle * standardUncertainty) / value,
    interval95: [low > 0 ? of(low) : 0, of(high)],
  } satisfies Uncertain;
}

/** Static merit that the prediction has at rest, at the greatest tip speed that was measured; null where it has none. */
function predictedMerit(reductions: readonly Reduction[], { predictor }: ShownPrediction): number | null {
  if (predictor === null) return null;
  const speeds = reductions.flatMap(({ plateaus, diameter }) =>
    plateaus.map(({ rotationRate }) => rotationRate.value * diameter.value),
  );
  if (speeds.length === 0) return null;
  const found = predictor.at({ rotationRate: Math.max(...speeds) / predictor.diameter, advanceSpeed: 0 });
  if (found.state === "unknown" || !(found.thrustCoefficient > 0) || !(found.torqueCoefficient > 0)) return null;
  return meritOf({
    thrustCoefficient: found.thrustCoefficient,
    powerCoefficient: found.torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT,
  });
}

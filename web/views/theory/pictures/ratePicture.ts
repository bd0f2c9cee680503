import type { Reduction } from "../../../../shared/model/reduction.ts";
import { limitThrust, thrustOfMerit } from "../../../../shared/propeller/bollardEstimate.ts";
import { powerCoefficient } from "../../../../shared/propeller/coefficients.ts";
import { predictedBollard } from "../../../../shared/propeller/prediction/predictedCurves.ts";
import { scaled, type Uncertain } from "../../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { thrustScale } from "../../bench/fitCharts.ts";
import { plateauName } from "../../bench/plateausModel.ts";
import { RPM } from "../../bench/shownUnits.ts";
import { freeStyle } from "../../variants/variantGroups.ts";
import { meanThrustCoefficient } from "../../variants/variantMean.ts";
import { discOf } from "../closeness/closenessModel.ts";
import { predictionSeries, type ShownPrediction, shownName } from "../predictions/shownPrediction.ts";
import type { MeasuredVariant, TheoryInputs } from "../theoryModel.ts";
import { advanceRatioOf } from "./advanceRatioOf.ts";
import { curve, greatest, thrustOf, UNMEASURED_REACH } from "./bollardCurve.ts";
import { discOfPrediction } from "./limitCurves.ts";

/** Measured thrust and fit against rotation rate, with what the stated merit would make of the same shaft power. */
export function thrustRateChart(
  variants: readonly MeasuredVariant[],
  inputs: TheoryInputs,
  predictions: readonly ShownPrediction[] = [],
): ChartSpec {
  const measured = variants.map(rateSeries).filter((series) => series.points.length > 0);
  const reach = greatest(measured) * 1.05 || UNMEASURED_REACH;
  const driver = mostPowerful(variants);
  const limit = rateLimit({ variants, predictions, inputs, reach });
  return {
    title: "Thrust against rotation rate with the prediction",
    x: { label: "Rotation rate", unit: "rpm", min: 0 },
    y: { label: "Bollard thrust", unit: "N", min: 0 },
    numbered: true,
    series: [
      ...(limit === null ? [] : [limit]),
      ...(driver === null ? [] : samePowerSeries(driver, { inputs, reach, style: freeStyle(variants) })),
      ...predictions.flatMap((one) => predictionSeries(one, predictedRate(one, inputs, reach))),
      ...variants.flatMap((variant) => fitSeries(variant, reach)),
      ...measured,
    ],
  };
}

/** Thrust of a prediction against rotation rate in the water of the bench. */
function predictedRate({ predictor }: ShownPrediction, { density }: TheoryInputs, reach: number): ChartPoint[] {
  if (predictor === null) return [];
  const rates = curve(reach, (rpm) => rpm).slice(1);
  const found = predictedBollard(
    predictor,
    density,
    rates.map(({ x }) => x * RPM.factor),
  );
  return [{ x: 0, y: 0 }, ...found.map(({ rotationRate, thrust }) => ({ x: rotationRate / RPM.factor, y: thrust }))];
}

interface Driver {
  readonly name: string;
  readonly reduction: Reduction;
  readonly powerCoefficient: Uncertain;
}

/** The variant that takes the most shaft power at a rotation rate: the limit at its power holds for the others too. */
function mostPowerful(variants: readonly MeasuredVariant[]): Driver | null {
  const known = variants.flatMap(({ name, reductions }) =>
    reductions.flatMap((reduction): Driver[] =>
      reduction.powerCoefficient === null ? [] : [{ name, reduction, powerCoefficient: reduction.powerCoefficient }],
    ),
  );
  const power = (one: Driver) => shaftPowerAt(one.reduction, one.powerCoefficient.value, 1);
  return known.reduce<Driver | null>((most, one) => (most === null || power(one) > power(most) ? one : most), null);
}

/** What takes shaft power at a rotation rate, and its disc. */
interface Taker {
  readonly name: string;
  readonly disc: TheoryInputs;
  /** W at a rotation rate in rev/s */
  readonly shaftPower: (rotationRate: number) => number;
}

/**
 * The region that momentum theory rules out at a rotation rate: that of whichever of the curves and points on show it leaves
 * most to, by its own power and disc. It holds for the others too, so that nothing possible is drawn inside.
 */
function rateLimit({
  variants,
  predictions,
  inputs,
  reach,
}: {
  readonly variants: readonly MeasuredVariant[];
  readonly predictions: readonly ShownPrediction[];
  readonly inputs: TheoryInputs;
  readonly reach: number;
}): ChartSeries | null {
  const takers = [...measuredTakers(variants, inputs), ...predictedTakers(predictions, inputs, reach * RPM.factor)];
  const limit = ({ disc, shaftPower }: Taker, rotationRate: number) => limitThrust(shaftPower(rotationRate), disc);
  const first = takers[0];
  if (first === undefined) return null;
  const most = takers.reduce((a, b) => (limit(b, 1) > limit(a, 1) ? b : a), first);
  return {
    id: "limit",
    name: `Momentum limit at the shaft power of ${most.name}`,
    kind: "limit",
    style: 0,
    points: curve(reach, (rpm) => limit(most, rpm * RPM.factor)),
  };
}

function measuredTakers(variants: readonly MeasuredVariant[], inputs: TheoryInputs): Taker[] {
  return variants.flatMap((variant) =>
    variant.reductions.flatMap((reduction): Taker[] => {
      const coefficient = reduction.powerCoefficient;
      if (coefficient === null || coefficient.value <= 0) return [];
      const disc = { ...discOf(variant, inputs), density: reduction.fluid.density, diameter: reduction.diameter.value };
      return [{ name: variant.name, disc, shaftPower: (rate) => shaftPowerAt(reduction, coefficient.value, rate) }];
    }),
  );
}

function predictedTakers(predictions: readonly ShownPrediction[], inputs: TheoryInputs, topRate: number): Taker[] {
  return predictions.flatMap((shown): Taker[] => {
    const { predictor } = shown;
    const disc = discOfPrediction(shown, inputs);
    if (predictor === null || disc === null) return [];
    const [point] = predictedBollard(predictor, inputs.density, [topRate]);
    if (point === undefined || !(point.shaftPower > 0)) return [];
    return [{ name: shownName(shown), disc, shaftPower: (rate) => point.shaftPower * (rate / topRate) ** 3 }];
  });
}

/** Prediction at the shaft power that `reduction` measured at each rotation rate; the band is that of C_P. */
function samePowerSeries(
  { name, reduction, powerCoefficient: coefficient }: Driver,
  { inputs, reach, style }: { readonly inputs: TheoryInputs; readonly reach: number; readonly style: number },
): ChartSeries[] {
  const disc = { ...inputs, density: reduction.fluid.density, diameter: reduction.diameter.value };
  const banded = curve(reach, (rpm) => rpm).map(({ x }): ChartPoint => {
    if (x === 0) return { x, y: 0 };
    const thrust = (c: number) =>
      thrustOfMerit(shaftPowerAt(reduction, Math.max(c, 1e-9), x * RPM.factor), inputs.staticMerit, disc);
    const [low, high] = coefficient.interval95;
    return { x, y: thrust(coefficient.value), yInterval: [thrust(low), thrust(high)] };
  });
  return [
    {
      id: "prediction",
      name: `Static merit ${inputs.staticMerit.toFixed(2)} at the shaft power of ${name}`,
      kind: "prediction",
      style,
      points: banded,
    },
  ];
}

function shaftPowerAt({ fluid, diameter }: Reduction, coefficient: number, rotationRate: number): number {
  const ofOneWatt = powerCoefficient({ shaftPower: 1, density: fluid.density, rotationRate, diameter: diameter.value });
  return coefficient / ofOneWatt;
}

function rateSeries({ name, style, reductions }: MeasuredVariant): ChartSeries {
  const points = reductions.flatMap((reduction) =>
    reduction.plateaus.flatMap((plateau, index): ChartPoint[] =>
      plateau.used && advanceRatioOf(reduction, index) === 0
        ? [
            {
              x: plateau.rotationRate.value / RPM.factor,
              ...thrustOf(plateau.thrust),
              note: `${name}, ${plateauName(index)}`,
            },
          ]
        : [],
    ),
  );
  return { id: `measured-${name}`, name, legend: name, kind: "measured", style, points };
}

/** The line of the variant's mean coefficient, in the water and with the diameter of its first run. */
function fitSeries({ name, style, reductions }: MeasuredVariant, reach: number): ChartSeries[] {
  const [reduction] = reductions;
  const coefficient = meanThrustCoefficient(reductions);
  if (reduction === undefined || coefficient === null) return [];
  const points = curve(reach, (rpm) => rpm).map(({ x }): ChartPoint => {
    if (x === 0) return { x, y: 0, yInterval: [0, 0] };
    const thrust = scaled(coefficient, thrustScale(reduction, x * RPM.factor));
    return { x, y: thrust.value, yInterval: thrust.interval95 };
  });
  return [{ id: `fit-${name}`, name: `Fit, ${name}`, legend: name, kind: "fit", style, points }];
}

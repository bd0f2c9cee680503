import { bollardEstimate, limitThrust, thrustOfMerit } from "../../../../shared/propeller/bollardEstimate.ts";
import { predictedBollard } from "../../../../shared/propeller/prediction/predictedCurves.ts";
import { rateForPower } from "../../../../shared/propeller/prediction/rateForPower.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { plateauName } from "../../bench/plateausModel.ts";
import { freeStyle } from "../../variants/variantGroups.ts";
import { predictionSeries, type ShownPrediction } from "../predictions/shownPrediction.ts";
import type { MeasuredVariant, TheoryInputs } from "../theoryModel.ts";
import { advanceRatioOf } from "./advanceRatioOf.ts";
import { curve, greatest, thrustOf } from "./bollardCurve.ts";
import { discOfPrediction, limitCurves } from "./limitCurves.ts";

export type PowerKind = "shaftPower" | "electricalPower";

/** Measured thrust against power, the prediction of the stated merit, and the region momentum theory rules out. */
export function thrustPowerChart(
  variants: readonly MeasuredVariant[],
  inputs: TheoryInputs,
  { kind, predictions = [] }: { readonly kind: PowerKind; readonly predictions?: readonly ShownPrediction[] },
): ChartSpec {
  const measured = variants.map((variant) => powerSeries(variant, kind)).filter((series) => series.points.length > 0);
  const reach = greatest(measured) * 1.08 || statedPower(inputs, kind) * 1.3;
  const passed = kind === "shaftPower" ? 1 : inputs.driveEfficiency;
  const name = kind === "shaftPower" ? "shaft power" : "electrical power";
  return {
    title: `Thrust against ${name} with the momentum limit`,
    x: { label: name[0]!.toUpperCase() + name.slice(1), unit: "W", min: 0 },
    y: { label: "Bollard thrust", unit: "N", min: 0 },
    numbered: true,
    series: [
      // Even a lossless motor passes on no more than it takes, so the limit for electrical power is that of the shaft.
      ...limitCurves({ inputs, predictions }, (disc) => curve(reach, (power) => limitThrust(power, disc))),
      {
        id: "prediction",
        name: `Prediction, static merit ${inputs.staticMerit.toFixed(2)}`,
        kind: "prediction",
        style: freeStyle(variants),
        points: curve(reach, (power) => thrustOfMerit(power * passed, inputs.staticMerit, inputs)),
      },
      ...predictions.flatMap((one) => predictionSeries(one, predictedPower(one, inputs, { reach, passed }))),
      ...measured,
    ],
  };
}

/** Thrust of a prediction against the power it takes, up to `reach` W. */
function predictedPower(
  shown: ShownPrediction,
  inputs: TheoryInputs,
  { reach, passed }: { readonly reach: number; readonly passed: number },
): ChartPoint[] {
  const { source } = shown.prediction;
  const { predictor } = shown;
  const disc = discOfPrediction(shown, inputs);
  if (source.kind === "staticMerit" && disc !== null)
    return curve(reach, (power) => thrustOfMerit(power * passed, source.staticMerit, disc));
  if (predictor === null) return [];
  const top = rateForPower(predictor, inputs.density, reach * passed);
  const rates = curve(top, (rate) => rate).slice(1);
  const found = predictedBollard(
    predictor,
    inputs.density,
    rates.map(({ x }) => x),
  );
  return [{ x: 0, y: 0 }, ...found.map(({ thrust, shaftPower }) => ({ x: shaftPower / passed, y: thrust }))];
}

function powerSeries({ name, style, reductions }: MeasuredVariant, kind: PowerKind): ChartSeries {
  const points = reductions.flatMap((reduction) =>
    reduction.plateaus.flatMap((plateau, index): ChartPoint[] => {
      const power = plateau[kind];
      if (power === null || !plateau.used || advanceRatioOf(reduction, index) !== 0) return [];
      return [
        {
          x: power.value,
          xInterval: power.interval95,
          ...thrustOf(plateau.thrust),
          note: `${name}, ${plateauName(index)}`,
        },
      ];
    }),
  );
  return { id: `measured-${name}`, name, legend: name, kind: "measured", style, points };
}

function statedPower(inputs: TheoryInputs, kind: PowerKind): number {
  return bollardEstimate(inputs)[kind];
}

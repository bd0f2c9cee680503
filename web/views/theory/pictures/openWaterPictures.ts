import type { AdvanceFit } from "../../../../shared/model/advance.ts";
import { predictedOpenWater } from "../../../../shared/propeller/prediction/predictedCurves.ts";
import { scaled, type Uncertain } from "../../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { meanThrustCoefficient, meanTorqueCoefficient } from "../../variants/variantMean.ts";
import { predictionSeries, type ShownPrediction } from "../predictions/shownPrediction.ts";
import type { MeasuredVariant } from "../theoryModel.ts";

/** The three quantities of an open-water diagram, each in a picture of its own so that ten curves stay readable. */
export type OpenWaterQuantity = "thrustCoefficient" | "torqueCoefficient" | "efficiency";

const STEPS = 48;

/** K_Q is drawn ten times as large, as open-water diagrams do. */
const AXES: Readonly<
  Record<OpenWaterQuantity, { readonly title: string; readonly label: string; readonly times: number }>
> = {
  thrustCoefficient: { title: "Thrust coefficient against advance ratio", label: "Thrust coefficient K_T", times: 1 },
  torqueCoefficient: {
    title: "Torque coefficient against advance ratio",
    label: "Torque coefficient, 10 K_Q",
    times: 10,
  },
  efficiency: { title: "Efficiency against advance ratio", label: "Efficiency η_O", times: 1 },
};

interface OpenWater {
  readonly variants: readonly MeasuredVariant[];
  readonly predictions: readonly ShownPrediction[];
  /** Rotation rate that blade elements are computed at, rev/s; a series does not depend on it. */
  readonly rotationRate: number;
}

/** One quantity against J: measured points, their curves, and the predictions. */
export function openWaterPicture({ variants, predictions, rotationRate }: OpenWater, of: OpenWaterQuantity): ChartSpec {
  const { title, label, times } = AXES[of];
  return {
    title,
    x: { label: "Advance ratio J", unit: "", min: 0 },
    y: { label, unit: "", min: 0 },
    numbered: true,
    series: [
      ...predictions.flatMap((one) => predictionOf(one, of, { times, rotationRate })),
      ...variants.flatMap((variant) => measuredOf(variant, of, times)),
    ],
  };
}

function predictionOf(
  shown: ShownPrediction,
  of: OpenWaterQuantity,
  { times, rotationRate }: { readonly times: number; readonly rotationRate: number },
): readonly ChartSeries[] {
  if (shown.predictor === null) return [];
  const points = predictedOpenWater(shown.predictor, rotationRate, STEPS).flatMap((point): ChartPoint[] => {
    const value = point[of];
    if (value === null || value < -ROUNDING) return [];
    return [{ x: point.advanceRatio, y: Math.abs(value) < ROUNDING ? 0 : value * times }];
  });
  return predictionSeries(shown, points);
}

/** The curve ends where the thrust is zero but for the last digits of the search. */
const ROUNDING = 1e-9;

/** Points and curves of the runs at speed; of a variant measured only at rest its bollard coefficient. */
function measuredOf(variant: MeasuredVariant, of: OpenWaterQuantity, times: number): ChartSeries[] {
  const fits = variant.reductions.flatMap(({ advance }) => (advance === null ? [] : [advance]));
  const shared = { legend: variant.name, style: variant.style } as const;
  const points = fits.length > 0 ? fits.flatMap((fit) => pointsOf(fit, of, times)) : atRest(variant, of, times);
  if (points.length === 0) return [];
  return [
    ...fits.slice(0, 1).flatMap((fit): ChartSeries[] => {
      const line = curveOf(fit, of, times);
      return line.length === 0
        ? []
        : [{ ...shared, id: `fit-${variant.name}`, name: `Curve, ${variant.name}`, kind: "fit", points: line }];
    }),
    { ...shared, id: `measured-${variant.name}`, name: variant.name, kind: "measured", points },
  ];
}

function pointsOf({ points }: AdvanceFit, of: OpenWaterQuantity, times: number): ChartPoint[] {
  return points.flatMap((point): ChartPoint[] => {
    const value = point[of];
    if (value === null) return [];
    return [
      {
        x: point.advanceRatio.value,
        xInterval: point.advanceRatio.interval95,
        ...ordinate(value, times),
        note: `plateau ${point.plateau}`,
      },
    ];
  });
}

function curveOf({ samples }: AdvanceFit, of: OpenWaterQuantity, times: number): ChartPoint[] {
  return samples.flatMap((sample): ChartPoint[] => {
    const value = sample[of];
    if (value === null || sample.isExtrapolated) return [];
    return [{ x: sample.advanceRatio, ...ordinate(value, times) }];
  });
}

function atRest({ reductions }: MeasuredVariant, of: OpenWaterQuantity, times: number): ChartPoint[] {
  if (of === "efficiency") return [];
  const mean = of === "thrustCoefficient" ? meanThrustCoefficient(reductions) : meanTorqueCoefficient(reductions);
  return mean === null ? [] : [{ x: 0, ...ordinate(mean, times), note: "at bollard" }];
}

function ordinate(value: Uncertain, times: number): Pick<ChartPoint, "y" | "yInterval"> {
  const { value: y, interval95 } = scaled(value, times);
  return { y, yInterval: interval95 };
}

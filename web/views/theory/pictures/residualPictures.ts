import type { Plateau, Reduction } from "../../../../shared/model/reduction.ts";
import {
  powerCoefficient,
  TORQUE_OVER_POWER_COEFFICIENT,
  thrustCoefficient,
} from "../../../../shared/propeller/coefficients.ts";
import type { Predictor } from "../../../../shared/propeller/prediction/predictor.ts";
import { scaled, type Uncertain } from "../../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { plateauName } from "../../bench/plateausModel.ts";
import { RPM } from "../../bench/shownUnits.ts";
import { type ShownPrediction, shownName } from "../predictions/shownPrediction.ts";
import type { MeasuredVariant } from "../theoryModel.ts";
import { advanceRatioOf } from "./advanceRatioOf.ts";

export type ResidualOf = "thrust" | "shaftPower";

/** What the points are laid out along: runs at rest differ in rotation rate, runs at speed in advance ratio. */
export type ResidualAgainst = "rotationRate" | "advanceRatio";

const AXES: Readonly<Record<ResidualAgainst, { readonly label: string; readonly unit: string }>> = {
  rotationRate: { label: "Rotation rate", unit: "rpm" },
  advanceRatio: { label: "Advance ratio J", unit: "" },
};

/**
 * Measured over predicted, plateau by plateau, at the rotation rate and in the water of the plateau. Coefficients are
 * compared, so that a propeller of another diameter than the prediction's is held against its equal in form.
 */
export function residualPicture(
  variants: readonly MeasuredVariant[],
  shown: ShownPrediction,
  of: ResidualOf,
  against: ResidualAgainst = "rotationRate",
): ChartSpec {
  const { predictor } = shown;
  const measured =
    predictor === null ? [] : variants.flatMap((variant) => seriesOf(variant, { predictor, of, against }));
  const name = of === "thrust" ? "Thrust" : "Shaft power";
  const along = measured.flatMap(({ points }) => points.map(({ x }) => x));
  const tops = measured.flatMap(({ points }) => points.map(({ y, yInterval }) => 1.05 * (yInterval?.[1] ?? y)));
  return {
    title: `${name}, measured over predicted by ${shownName(shown)}`,
    x: { ...AXES[against], min: 0 },
    y: { label: `${name}, measured over predicted`, unit: "", min: 0, max: Math.max(1.2, ...tops) },
    numbered: true,
    series: [
      {
        id: "equal",
        name: "As predicted",
        kind: "fit",
        style: EQUAL_STYLE,
        points: along.length === 0 ? [] : [0, Math.max(...along) * 1.05 || 1].map((x) => ({ x, y: 1 })),
      },
      ...measured,
    ],
  };
}

/** Thrust coefficient below which a ratio of two thrusts says nothing. */
const NO_THRUST = 0.02;

/** The line of equality is drawn in ink, the last of the styles. */
const EQUAL_STYLE = 4;

interface Compared {
  readonly predictor: Predictor;
  readonly of: ResidualOf;
  readonly against: ResidualAgainst;
}

function seriesOf({ name, style, reductions }: MeasuredVariant, { predictor, of, against }: Compared): ChartSeries[] {
  const points = reductions.flatMap((reduction) =>
    reduction.plateaus.flatMap((plateau, index): ChartPoint[] => {
      const advanceRatio = advanceRatioOf(reduction, index);
      if (!plateau.used || advanceRatio === null) return [];
      const ratio = ratioOf(plateau, reduction, { predictor, of, advanceRatio });
      if (ratio === null) return [];
      return [
        {
          x: against === "advanceRatio" ? advanceRatio : plateau.rotationRate.value / RPM.factor,
          y: ratio.value,
          yInterval: ratio.interval95,
          note: `${name}, ${plateauName(index)}`,
        },
      ];
    }),
  );
  return points.length === 0 ? [] : [{ id: `measured-${name}`, name, kind: "measured", style, points }];
}

function ratioOf(
  { rotationRate: { value: rotationRate }, thrust, shaftPower }: Plateau,
  { fluid: { density }, diameter: { value: diameter } }: Reduction,
  { predictor, of, advanceRatio }: Omit<Compared, "against"> & { readonly advanceRatio: number },
): Uncertain | null {
  // Equal tip speed and advance ratio in another size: the prediction is asked at the rotation rate that gives its own diameter this tip speed.
  const predicted = predictor.at({
    rotationRate: (rotationRate * diameter) / predictor.diameter,
    advanceSpeed: advanceRatio * rotationRate * diameter,
  });
  if (predicted.state === "unknown" || predicted.thrustCoefficient <= NO_THRUST) return null;
  const running = { density, rotationRate, diameter };
  if (of === "thrust")
    return scaled(thrust, thrustCoefficient({ thrust: 1, ...running }) / predicted.thrustCoefficient);
  const coefficient = predicted.torqueCoefficient / TORQUE_OVER_POWER_COEFFICIENT;
  return shaftPower === null ? null : scaled(shaftPower, powerCoefficient({ shaftPower: 1, ...running }) / coefficient);
}

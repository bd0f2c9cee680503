import { advanceSentence, orderWords } from "../../../shared/bench/advance/advanceSentence.ts";
import type { AdvanceFit, AdvancePoint } from "../../../shared/model/advance.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { formatUncertain } from "../../../shared/quantity/format.ts";
import { scaled, type Uncertain } from "../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../charts/chartSpec.ts";
import { plateauName } from "./plateausModel.ts";

/** One of the three curves that are drawn against the advance ratio. */
interface Curve {
  readonly id: string;
  readonly name: string;
  readonly style: number;
  readonly of: (from: Coefficients) => Uncertain | null;
}

type Coefficients = Pick<AdvancePoint, "thrustCoefficient" | "torqueCoefficient" | "efficiency">;

/** K_Q is drawn tenfold, as open-water diagrams do, so that the three share one axis. */
const CURVES: readonly Curve[] = [
  { id: "thrust", name: "K_T", style: 0, of: ({ thrustCoefficient }) => thrustCoefficient },
  {
    id: "torque",
    name: "10 K_Q",
    style: 1,
    of: ({ torqueCoefficient }) => torqueCoefficient && scaled(torqueCoefficient, 10),
  },
  { id: "efficiency", name: "Efficiency η", style: 2, of: ({ efficiency }) => efficiency },
];

/** An efficiency is drawn no lower: beyond zero thrust it falls without end and would flatten the rest. */
const LOWEST_EFFICIENCY = -0.1;
/** A band wider than this says nothing and hides the others. */
const WIDEST_BAND = 1;

/** Points with their intervals and curves with their bands against J. */
export function openWaterChart(advance: AdvanceFit): ChartSpec {
  return {
    title: "Thrust, torque and efficiency against the advance ratio",
    x: { label: "Advance ratio J = V/(n D)", unit: "", ...(advance.range[0] >= 0 && { min: 0 }) },
    y: { label: "K_T, 10 K_Q, efficiency", unit: "" },
    series: CURVES.flatMap((curve) => seriesOf(curve, advance)).filter(({ points }) => points.length > 0),
    markers: advance.zeroThrust
      ? [
          {
            x: advance.zeroThrust.advanceRatio.value,
            label: advance.zeroThrust.isExtrapolated ? "zero thrust, continued" : "zero thrust",
          },
        ]
      : [],
  };
}

function seriesOf({ id, name, style, of }: Curve, { points, samples }: AdvanceFit): ChartSeries[] {
  const shown = (value: Uncertain | null): value is Uncertain =>
    value !== null && (id !== "efficiency" || value.value >= LOWEST_EFFICIENCY);
  const measured = (fitted: boolean): ChartPoint[] =>
    points
      .filter((point) => point.isFitted === fitted)
      .flatMap((point) => {
        const value = of(point);
        if (!shown(value)) return [];
        const { advanceRatio, plateau } = point;
        return [
          {
            ...{ x: advanceRatio.value, xInterval: advanceRatio.interval95 },
            ...{ y: value.value, yInterval: value.interval95, note: plateauName(plateau - 1) },
          },
        ];
      });
  const line = (extrapolated: boolean): ChartPoint[] =>
    samples.flatMap((sample, i) => {
      const value = of(sample);
      // The last continued step meets the first measured one, or a gap would show.
      const meets = extrapolated && !sample.isExtrapolated && samples[i - 1]?.isExtrapolated === true;
      if (!shown(value) || (sample.isExtrapolated !== extrapolated && !meets)) return [];
      const band = value.interval95[1] - value.interval95[0] < WIDEST_BAND ? { yInterval: value.interval95 } : {};
      return [{ x: sample.advanceRatio, y: value.value, ...band }];
    });
  return [
    { id: `${id}-points`, name: `${name}, plateaus`, kind: "measured", style, points: measured(true) },
    { id: `${id}-left`, name: `${name}, left out`, kind: "leftOut", style, points: measured(false) },
    { id: `${id}-curve`, name: `${name}, curve`, kind: "fit", style, points: line(false) },
    { id: `${id}-continued`, name: `${name}, continued to rest`, kind: "prediction", style, points: line(true) },
  ];
}

/** The sentence of the run, and the orders of the curves. */
export function advanceWords(reduction: Reduction): { answer: string; orders: string } | null {
  const { advance, thrustCoefficient } = reduction;
  if (advance === null) return null;
  const ofPower = advance.powerCurve ? ` C_P(J): ${orderWords(advance.powerCurve)}.` : "";
  return {
    answer: advanceSentence({ thrustCoefficient, advance }),
    orders: `K_T(J): ${orderWords(advance.thrustCurve)}.${ofPower}`,
  };
}

export interface AdvanceRow {
  readonly name: string;
  readonly cells: readonly string[];
}

export const ADVANCE_HEADS = ["Speed", "J", "K_T", "K_Q", "Efficiency", "Distance from the curve"] as const;

/** Every plateau at its advance ratio. */
export function advanceRows({ points }: AdvanceFit): AdvanceRow[] {
  const shown = (value: Uncertain | null) => (value ? formatUncertain(value) : "–");
  return points.map((point) => ({
    name: plateauName(point.plateau - 1),
    cells: [
      `${formatUncertain(point.speed)}\u202fm/s`,
      formatUncertain(point.advanceRatio),
      formatUncertain(point.thrustCoefficient),
      shown(point.torqueCoefficient),
      shown(point.efficiency),
      point.residual === null ? "not in the curves" : `${point.residual.toFixed(1)}\u202fu`,
    ],
  }));
}

/** The recipe with the order of the curves stated, or left to the points. */
export function withOrder(recipe: Recipe, order: number | null): Recipe {
  const { advanceOrder: _former, ...others } = recipe;
  return order === null ? others : { ...others, advanceOrder: order };
}

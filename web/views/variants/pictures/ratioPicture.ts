import type { Comparison } from "../../../../shared/model/comparison.ts";
import { scaled } from "../../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { thrustScale } from "../../bench/fitCharts.ts";
import { plateauName } from "../../bench/plateausModel.ts";
import { RPM } from "../../bench/shownUnits.ts";
import { reductionsOf, type VariantRuns } from "../variantGroups.ts";
import { meanThrustCoefficient } from "../variantMean.ts";
import { NAMED_BY_MARKERS } from "../variantsChart.ts";

/**
 * Thrust of every plateau over what the baseline pushes at the same rotation rate, size and water for size and water, with the
 * ratio of the comparison and its band: a ratio that leans with the rotation rate shows here.
 */
export function ratioPicture(
  groups: readonly VariantRuns[],
  baseline: VariantRuns,
  comparisons: readonly Comparison[],
): ChartSpec {
  const coefficient = meanThrustCoefficient(reductionsOf(baseline));
  const measured =
    coefficient === null ? [] : groups.flatMap((group) => pointsOf(group, coefficient.value)).filter(hasPoints);
  const reach = Math.max(0, ...measured.flatMap(({ points }) => points.map(({ x }) => x))) * 1.05;
  const levels = comparisons.flatMap((one) => levelOf(one, groups, reach));
  const tops = [...measured, ...levels].flatMap(({ points }) => points.map(({ y, yInterval }) => yInterval?.[1] ?? y));
  return {
    title: `Thrust over that of ${baseline.name}, against rotation rate`,
    x: { label: "Rotation rate", unit: "rpm", min: 0 },
    y: { label: `Thrust over ${baseline.name}`, unit: "", min: 0, max: Math.max(1.2, ...tops) * 1.04 },
    numbered: measured.length > NAMED_BY_MARKERS,
    series: [...levels, ...measured],
  };
}

const hasPoints = ({ points }: ChartSeries) => points.length > 0;

function pointsOf({ name, style, members }: VariantRuns, baseline: number): ChartSeries[] {
  const points = members.flatMap(({ run, reduction }) =>
    (reduction?.plateaus ?? []).flatMap((plateau, index): ChartPoint[] => {
      if (!plateau.used || reduction === null) return [];
      const { value: rate } = plateau.rotationRate;
      const ratio = scaled(plateau.thrust, 1 / (baseline * thrustScale(reduction, rate)));
      return [
        {
          x: rate / RPM.factor,
          y: ratio.value,
          yInterval: ratio.interval95,
          note: `${run.name}, ${plateauName(index).toLowerCase()}`,
        },
      ];
    }),
  );
  return [{ id: `ratio-${name}`, name, legend: name, kind: "measured", style, points }];
}

function levelOf(comparison: Comparison, groups: readonly VariantRuns[], reach: number): ChartSeries[] {
  const { variant, thrustCoefficientRatio: ratio } = comparison;
  const style = groups.find(({ name }) => name === variant.name)?.style ?? 0;
  if (!(reach > 0)) return [];
  const points = [0, reach].map((x): ChartPoint => ({ x, y: ratio.value, yInterval: [...ratio.interval95] }));
  return [
    { id: `level-${variant.name}`, name: `Ratio, ${variant.name}`, legend: variant.name, kind: "fit", style, points },
  ];
}

import { scaled } from "../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../charts/chartSpec.ts";
import { thrustScale } from "../bench/fitCharts.ts";
import { plateauName } from "../bench/plateausModel.ts";
import { RPM } from "../bench/shownUnits.ts";
import { reductionsOf, type VariantRuns } from "./variantGroups.ts";
import { meanThrustCoefficient } from "./variantMean.ts";

const STEPS = 40;

/** Variants that their markers tell apart at a glance; more carry numbers, so that they are told apart in grey too. */
export const NAMED_BY_MARKERS = 2;

/** Thrust against rotation rate of every variant: measured points with error bars, and the line of the variant with its band. */
export function overlayChart(groups: readonly VariantRuns[]): ChartSpec {
  const measured = groups.map(measuredSeries).filter((series) => series.points.length > 0);
  const highest = Math.max(0, ...measured.flatMap((series) => series.points.map((point) => point.x))) * 1.05;
  return {
    title: "Thrust against rotation rate, all variants",
    x: { label: "Rotation rate", unit: "rpm", min: 0 },
    y: { label: "Thrust", unit: "N" },
    numbered: measured.length > NAMED_BY_MARKERS,
    series: [...groups.flatMap((group) => fitSeries(group, highest)), ...measured],
  };
}

function measuredSeries({ name, style, members }: VariantRuns): ChartSeries {
  const points = members.flatMap(({ run, reduction }) =>
    (reduction?.plateaus ?? []).flatMap((plateau, index): ChartPoint[] =>
      plateau.used
        ? [
            {
              x: plateau.rotationRate.value / RPM.factor,
              y: plateau.thrust.value,
              yInterval: plateau.thrust.interval95,
              note: `${run.name}, ${plateauName(index).toLowerCase()}`,
            },
          ]
        : [],
    ),
  );
  return { id: `measured-${name}`, name, legend: name, kind: "measured", style, points };
}

/** The line of the variant's mean coefficient, in the water and with the diameter of its first run. */
function fitSeries(group: VariantRuns, highest: number): ChartSeries[] {
  const reductions = reductionsOf(group);
  const [reduction] = reductions;
  const coefficient = meanThrustCoefficient(reductions);
  if (reduction === undefined || coefficient === null || !(highest > 0)) return [];
  const points = Array.from({ length: STEPS + 1 }, (_, step): ChartPoint => {
    const rpm = (highest * step) / STEPS;
    if (step === 0) return { x: 0, y: 0, yInterval: [0, 0] };
    const thrust = scaled(coefficient, thrustScale(reduction, rpm * RPM.factor));
    return { x: rpm, y: thrust.value, yInterval: thrust.interval95 };
  });
  return [
    {
      id: `fit-${group.name}`,
      name: `Fit, ${group.name}`,
      legend: group.name,
      kind: "fit",
      style: group.style,
      points,
    },
  ];
}

import type { LineFindings } from "../../../shared/calibration/calibration.ts";
import { readingAt } from "../../../shared/calibration/calibrationLine.ts";
import { type Direction, directionsOf } from "../../../shared/calibration/direction.ts";
import { coverageFactor } from "../../../shared/quantity/uncertain.ts";
import type { ChartPoint, ChartSpec } from "../../charts/chartSpec.ts";

const WAYS: readonly { readonly way: Direction; readonly name: string; readonly style: number }[] = [
  { way: "loading", name: "Going up", style: 0 },
  { way: "unloading", name: "Coming down", style: 1 },
];

/** The points and their straight line, with the band that holds the line in 95 of 100 such calibrations. */
export function lineChart(findings: LineFindings): ChartSpec {
  const { line, appliedUnit, readingUnit } = findings;
  const k = coverageFactor(line.degreesOfFreedom);
  const [low, high] = line.range;
  const steps = 12;
  const fit = Array.from({ length: steps + 1 }, (_, step): ChartPoint => {
    const x = low + ((high - low) * step) / steps;
    const { value, standardUncertainty: u } = readingAt(line, x);
    return { x, y: value, yInterval: [value - k * u, value + k * u] };
  });
  return {
    title: "Readings against what was applied",
    x: { label: "Applied", unit: appliedUnit },
    y: { label: "Reading", unit: readingUnit },
    series: [
      ...seriesOf(findings, (i) => line.points[i]!.reading),
      { id: "fit", name: "Least-squares", kind: "fit", style: 2, points: fit },
    ],
  };
}

/** What the straight line leaves: friction parts the two ways, curvature makes a bow. */
export function residualsChart(findings: LineFindings): ChartSpec {
  const { line, appliedUnit, readingUnit } = findings;
  const [low, high] = line.range;
  return {
    title: "Reading less straight line",
    x: { label: "Applied", unit: appliedUnit },
    y: { label: "Residual", unit: readingUnit },
    series: [
      ...seriesOf(findings, (i) => line.residuals[i]!),
      {
        id: "fit",
        name: "Least-squares",
        kind: "fit",
        style: 2,
        points: [
          { x: low, y: 0 },
          { x: high, y: 0 },
        ],
      },
    ],
  };
}

function seriesOf({ line, outliers }: LineFindings, yOf: (index: number) => number): ChartSpec["series"] {
  const directions = directionsOf(line.points);
  return WAYS.map(({ way, name, style }) => ({
    id: way,
    name,
    kind: "measured" as const,
    style,
    points: line.points.flatMap(({ applied }, i) =>
      directions[i] === way
        ? [{ x: applied, y: yOf(i), note: `point ${i + 1}${outliers.includes(i) ? ", far from the line" : ""}` }]
        : [],
    ),
  })).filter(({ points }) => points.length > 0);
}

import type { ChartSpec } from "./chartSpec.ts";
import { axisTitle, yAxisOf } from "./pointWords.ts";

/** The numbers of a chart as rows; null where a point has no such number. */
export interface TableOfChart {
  readonly head: readonly string[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** Every number that the picture shows, intervals and notes included; columns that no point fills are left away. */
export function chartTable(spec: ChartSpec): TableOfChart {
  const seconds = spec.y2 && spec.series.some((series) => series.secondAxis);
  const columns = [
    { title: "Series", always: true },
    { title: axisTitle(spec.x), always: true },
    { title: `${axisTitle(spec.x)}, low end of 95 %`, always: false },
    { title: `${axisTitle(spec.x)}, high end of 95 %`, always: false },
    { title: seconds ? "Quantity" : "", always: false },
    { title: seconds ? "Value" : axisTitle(spec.y), always: true },
    { title: seconds ? "Low end" : `${axisTitle(spec.y)}, ${endWord(spec, "low")}`, always: false },
    { title: seconds ? "High end" : `${axisTitle(spec.y)}, ${endWord(spec, "high")}`, always: false },
    { title: "Note", always: false },
  ];
  const rows = spec.series.flatMap((series) =>
    series.points.map((point) => [
      series.name,
      point.x,
      point.xInterval?.[0] ?? null,
      point.xInterval?.[1] ?? null,
      seconds ? axisTitle(yAxisOf(spec, series)) : null,
      point.y,
      point.yInterval?.[0] ?? null,
      point.yInterval?.[1] ?? null,
      point.note ?? null,
    ]),
  );
  const kept = columns.map(({ always }, at) => always || rows.some((row) => row[at] !== null));
  return {
    head: columns.filter((_, at) => kept[at]).map(({ title }) => title),
    rows: rows.map((row) => row.filter((_, at) => kept[at])),
  };
}

function endWord(spec: ChartSpec, end: "low" | "high"): string {
  const allTraces = spec.series.every(({ kind }) => kind === "trace");
  if (allTraces) return end === "low" ? "least" : "greatest";
  return `${end} end of 95 %`;
}

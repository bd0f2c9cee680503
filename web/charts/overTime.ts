import type { ChartSpec } from "./chartSpec.ts";

/** The picture is one over time: a zoom cuts a stretch of it out, and the heights fit what is left. */
export function isOverTime({ series }: ChartSpec): boolean {
  return series.some(({ kind }) => kind === "trace");
}

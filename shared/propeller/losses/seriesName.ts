import type { SeriesPropeller } from "../../model/seriesPropeller.ts";
import { formatNumber } from "../../quantity/format.ts";

/** What a series propeller is called in a sentence. */
export function seriesName(series: SeriesPropeller): string {
  const pitch = `P/D ${formatNumber(series.pitchRatio, 2)}`;
  if (series.family === "wageningen-b") {
    return `a smooth B-series screw of ${series.blades} blades, ${pitch} and area ratio ${formatNumber(series.areaRatio, 2)}`;
  }
  return `a ${series.family === "ka-4-70-19a" ? "Ka 4-70" : "Ka 5-75"} screw of ${pitch} in nozzle 19A`;
}

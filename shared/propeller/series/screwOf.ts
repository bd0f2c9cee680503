import type { SeriesWithoutPitch } from "../../model/seriesPropeller.ts";

/** Blades and expanded area ratio that the names of the nozzle screws stand for. */
const NOZZLE_SCREWS = {
  "ka-4-70-19a": { blades: 4, areaRatio: 0.7 },
  "ka-5-75-19a": { blades: 5, areaRatio: 0.75 },
} as const;

/** Number of blades and expanded area ratio of the screws of a series, those in a nozzle as their names say. */
export function screwOf(series: SeriesWithoutPitch): { readonly blades: number; readonly areaRatio: number } {
  if (series.family !== "wageningen-b") return NOZZLE_SCREWS[series.family];
  const { blades, areaRatio } = series;
  return { blades, areaRatio };
}

import type { SeriesPropeller } from "../../model/seriesPropeller.ts";
import { formatNumber } from "../../quantity/format.ts";
import { OutOfDomain, type Problem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { reynoldsWords } from "../reynoldsWords.ts";
import { GREATEST_REYNOLDS, SERIES_REYNOLDS } from "./reynoldsCorrection.ts";

/** Pitch ratios a series was fitted over. */
export function pitchRange({ family }: Pick<SeriesPropeller, "family">): readonly [number, number] {
  return family === "wageningen-b" ? [0.5, 1.4] : [0.6, 1.4];
}

const AREA_RANGE: readonly [number, number] = [0.3, 1.05];

/**
 * Least and greatest area ratio that was tested with each number of blades.
 * Source: van Lammeren, van Manen & Oosterveld, The Wageningen B-screw series, SNAME Transactions 77 (1969); Carlton,
 * Marine Propellers and Propulsion, table 6.4.
 */
const TESTED_AREAS: Readonly<Record<number, readonly [number, number]>> = {
  2: [0.3, 0.3],
  3: [0.35, 0.8],
  4: [0.4, 1],
  5: [0.45, 1.05],
  6: [0.5, 0.8],
  7: [0.55, 0.85],
};

export interface SeriesState {
  readonly series: SeriesPropeller;
  /** Of the section at 0.75 of the radius; absent where it is not known. */
  readonly reynolds?: number;
  /** Numbers outside the tested range are wanted, and flagged. */
  readonly outsideRange?: boolean;
}

/**
 * What a reader must know of a propeller of a series.
 *
 * Throws   OutOfDomain for blades, pitch, area or Reynolds number outside the tested range, unless `outsideRange` asks
 *          for it.
 */
export function seriesWarnings({ series, reynolds, outsideRange = false }: SeriesState): Warning[] {
  const outside = [pitchOutside(series), ...openOutside(series), reynoldsOutside(reynolds)].filter((p) => p !== null);
  refuseUnlessAsked(outside, outsideRange);
  return [...outside.map(warning), ...untested(series), yardstick(reynolds)];
}

/** Throws the first of `outside` as OutOfDomain unless numbers outside the range are wanted. */
export function refuseUnlessAsked([first]: readonly Problem[], outsideRange: boolean): void {
  if (first !== undefined && !outsideRange) throw new OutOfDomain(first);
}

/** A quantity outside the range of the series as a problem. */
export function outsideSeries(where: string, found: string, needed: string): Problem {
  const mend = "Stay inside, or ask for numbers outside the range: the polynomials were not fitted there";
  return { code: "propeller.series-range", where, found, needed, mend };
}

function pitchOutside(series: SeriesPropeller): Problem | null {
  const [low, high] = pitchRange(series);
  if (series.pitchRatio >= low && series.pitchRatio <= high) return null;
  const found = `A pitch ratio of ${formatNumber(series.pitchRatio)} lies outside the tests of the series`;
  return outsideSeries("series.pitchRatio", found, `${low} to ${high}`);
}

function openOutside(series: SeriesPropeller): (Problem | null)[] {
  if (series.family !== "wageningen-b") return [];
  const { areaRatio, blades } = series;
  const [low, high] = AREA_RANGE;
  const isInside = areaRatio >= low && areaRatio <= high;
  return [
    Object.hasOwn(TESTED_AREAS, blades)
      ? null
      : outsideSeries("series.blades", `${blades} blades lie outside the tests of the series`, "2 to 7"),
    isInside
      ? null
      : outsideSeries(
          "series.areaRatio",
          `An area ratio of ${formatNumber(areaRatio)} lies outside the tests of the series`,
          `${low} to ${high}`,
        ),
  ];
}

function reynoldsOutside(reynolds = SERIES_REYNOLDS): Problem | null {
  if (reynolds <= GREATEST_REYNOLDS) return null;
  return outsideSeries(
    "reynolds",
    `A Reynolds number of ${reynoldsWords(reynolds)} lies beyond the correction of the series`,
    `at most ${reynoldsWords(GREATEST_REYNOLDS)}`,
  );
}

function untested(series: SeriesPropeller): Warning[] {
  if (series.family !== "wageningen-b") return [];
  const { areaRatio, blades } = series;
  const tested = TESTED_AREAS[blades];
  if (tested === undefined) return [];
  const [low, high] = tested;
  if (areaRatio >= low && areaRatio <= high) return [];
  return [
    warning({
      code: "propeller.series-member",
      where: "series.areaRatio",
      found: `No screw of ${blades} blades with an area ratio of ${formatNumber(areaRatio)} was tested; the polynomials carry over from other members`,
      needed: low === high ? `${low}` : `${low} to ${high}`,
      mend: "Take the numbers as a rough guide",
    }),
  ];
}

/**
 * A series says what a smooth, well-made propeller does, whoever reads its numbers; below the Reynolds number of its tests
 * they are not extrapolated.
 */
function yardstick(reynolds: number | undefined): Warning {
  const isSmall = reynolds !== undefined && reynolds < SERIES_REYNOLDS;
  const at = isSmall ? `At a blade Reynolds number at 0.75 R of ${reynoldsWords(reynolds)} these` : "These";
  return warning({
    code: "propeller.series-yardstick",
    where: "reynolds",
    found: `${at} numbers are those of a smooth, well-made propeller of full size: a yardstick, not a forecast`,
    needed: `a blade Reynolds number at 0.75 R of ${reynoldsWords(SERIES_REYNOLDS)} or more, where the series was tested, and blades as smooth`,
    mend: "Expect less thrust and more torque of a small or printed propeller; blade elements or a measurement tell how much",
  });
}

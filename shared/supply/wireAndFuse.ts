import type { WireAndFuse, WireAndFuseRequest, WireChoice, WireSuggestion } from "../model/wireAndFuse.ts";
import { copperResistanceRatio } from "../quantity/copper.ts";
import { gaugeArea, resistancePerLength } from "./conductor.ts";
import { BLADE_FUSES, FUSE_MARGIN, type FuseSeries, LOW_VOLTAGE_FUSES } from "./fuseRatings.data.ts";
import { wireSentences } from "./wireSentences.ts";
import { LISTED_CONDUCTORS, USUAL_GAUGES } from "./wireSizes.data.ts";
import { wireWarnings } from "./wireWarnings.ts";

/**
 * Smallest usual wire for a current over a length, and the fuse that goes with it.
 *
 *   drop 2 R' l I/U at most the allowed one;   J A at least I, and at least the rating of the fuse;   fuse ≥ 1.25 I
 *
 * Source   resistances as `resistancePerLength`; 1.25 times the continuous current, 5 A/mm² and a drop of 3 %: common
 *          practice, no source; ratings see `fuseRatings.data.ts`.
 * Assumes  one pair of copper wires, alone, in air or water that can take its heat; wound up or in a tight bundle it
 *          carries much less.
 * Error    the resistance of a listed wire is the largest that is allowed: a drop is told some percent too high.
 * Returns  null for a size or fuse that the lists do not reach, with a warning that says so.
 */
export function wireAndFuse(request: WireAndFuseRequest): WireAndFuse {
  const series = request.voltage <= BLADE_FUSES.greatestVoltage ? BLADE_FUSES : LOW_VOLTAGE_FUSES;
  const fuse = nextRating(series, FUSE_MARGIN * request.continuousCurrent);
  const wires = [suggestion("metric", request, fuse), suggestion("gauge", request, fuse)];
  const found = { wires, fuse, fuseSeries: series.name };
  return {
    ...found,
    sentences: wireSentences(request, found),
    warnings: wireWarnings(request, { ...found, series }),
  };
}

function nextRating({ ratings }: FuseSeries, least: number): number | null {
  // A hair of grace: 1.25 times 20 A is 25 A, whatever the last bit says.
  return ratings.find((rating) => rating >= least * (1 - 1e-9)) ?? null;
}

function suggestion(list: WireSuggestion["list"], request: WireAndFuseRequest, fuse: number | null): WireSuggestion {
  const sizes = sizesOf(list, request);
  const first = (fits: (wire: WireChoice) => boolean) => sizes.find(fits) ?? null;
  const byDrop = first(({ dropShare }) => dropShare <= request.allowedDrop);
  const byCurrent = first(({ carries }) => carries >= request.continuousCurrent);
  const byFuse = fuse === null ? null : first(({ carries }) => carries >= fuse);
  const needed = fuse === null ? [byDrop, byCurrent] : [byDrop, byCurrent, byFuse];
  const known = needed.filter((wire) => wire !== null);
  const largest = known.reduce<WireChoice | null>((most, one) => (most && most.area >= one.area ? most : one), null);
  return { list, byDrop, byCurrent, byFuse, chosen: known.length === needed.length ? largest : null };
}

/** Every size of a list under the current, from thin to thick. */
function sizesOf(list: WireSuggestion["list"], request: WireAndFuseRequest): WireChoice[] {
  if (list === "metric") {
    return LISTED_CONDUCTORS.map(({ area }) =>
      choice(metricName(area), area, resistancePerLength({ given: "area", area }).value, request),
    );
  }
  return USUAL_GAUGES.map((gauge) =>
    choice(gaugeName(gauge), gaugeArea(gauge), resistancePerLength({ given: "gauge", gauge }).value, request),
  );
}

/** 1.5e-6 m² as "1.5 mm²". */
const metricName = (area: number) => `${Number((area * 1e6).toPrecision(6))} mm²`;
const gaugeName = (gauge: number) => (gauge === 0 ? "AWG 1/0" : `AWG ${gauge}`);

function choice(name: string, area: number, perLength: number, request: WireAndFuseRequest): WireChoice {
  const { continuousCurrent: I, length, voltage, temperature, currentDensity } = request;
  const resistance = 2 * perLength * length * copperResistanceRatio(temperature);
  const drop = resistance * I;
  return {
    ...{ name, area, resistance, drop },
    dropShare: drop / voltage,
    loss: drop * I,
    carries: currentDensity * area,
  };
}

import type { Criterion } from "../model/shortlist.ts";
import type { FrontQuantity } from "../model/shortlistResult.ts";
import { Best } from "./best.ts";
import type { Sizes } from "./combinations.ts";
import { type FrontPoint, ParetoFront } from "./front.ts";

/** Shares of what is allowed by which a demand is eased, to see what that would gain. */
export const EASINGS = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5] as const;

/** Pairs of quantities that a front is kept over, with the sense of each. */
export const FRONT_PAIRS = [
  ["thrustPerPower", "price"],
  ["thrustPerPower", "mass"],
  ["thrust", "thrustPerPower"],
  ["thrust", "mass"],
  ["thrust", "price"],
  ["mass", "price"],
] as const satisfies readonly (readonly [FrontQuantity, FrontQuantity])[];

export const QUANTITY_SENSE = { thrustPerPower: 1, thrust: 1, mass: -1, price: -1 } as const;

/** Least and greatest of a criterion over those that meet; `endless` where one has no end. */
export interface Range {
  least: number;
  greatest: number;
  endless: boolean;
}

/** A combination that fails, by the greatest share it falls short. */
export interface Miss {
  readonly number: number;
  readonly shortfall: number;
}

/**
 * What is known of a stretch of combinations, without keeping them: counts, ranges, fronts, nearest misses, and one bit
 * for each that meets. Made of plain arrays, so that a thread can send it.
 */
export interface Tally {
  readonly start: number;
  readonly end: number;
  meetingByBestEstimate: number;
  meeting: number;
  meetingAt95: number;
  /** For each slot: combinations that fail it; fail it alone; keep it without the stated confidence. */
  readonly failing: Float64Array;
  readonly alone: Float64Array;
  readonly uncertain: Float64Array;
  /** For each slot and easing: of those that fail it alone, how many fall short by no more. */
  readonly eased: Float64Array;
  /** For each slot: least shortfall of those that fail it alone, and the number of that combination. */
  readonly leastShare: Float64Array;
  readonly leastNumber: Float64Array;
  /** For each part, in the order of kinds and places: combinations that meet. */
  readonly partMeeting: Float64Array;
  /** For each part and slot: its combinations that fail it. */
  readonly partFailing: Float64Array;
  /** One bit for each combination from `start` on: it meets. */
  readonly meets: Uint8Array;
  readonly ranges: Record<Criterion, Range>;
  readonly fronts: readonly { readonly points: readonly FrontPoint[]; readonly of: number }[];
  readonly misses: readonly Miss[];
}

/** Parts of all kinds in one row: motors, controllers, supplies, gears, propellers. */
export function partCount({ motors, controllers, supplies, gears, propellers }: Sizes): number {
  return motors + controllers + supplies + gears + propellers;
}

/** First place of each kind in that row. */
export function partBases({ motors, controllers, supplies, gears }: Sizes) {
  const controller = motors;
  const supply = controller + controllers;
  const gear = supply + supplies;
  return { motor: 0, controller, supply, gear, propeller: gear + gears };
}

const emptyRange = (): Range => ({ least: Infinity, greatest: -Infinity, endless: false });

/** Ranges that no combination has widened yet. */
export function emptyRanges(): Record<Criterion, Range> {
  return {
    thrustPerPower: emptyRange(),
    mass: emptyRange(),
    price: emptyRange(),
    thrustMargin: emptyRange(),
    tipSpeed: emptyRange(),
    endurance: emptyRange(),
  };
}

/** Widens `range` so that it holds `value`; one that is not known is passed over. */
export function widen(range: Range, value: number): void {
  if (value === Infinity) range.endless = true;
  if (!Number.isFinite(value)) return;
  if (value < range.least) range.least = value;
  if (value > range.greatest) range.greatest = value;
}

/** The tallies of stretches that follow each other, as one. Its bits are left out: they stay with the stretches. */
export function mergedTally(tallies: readonly Tally[], misses: number): Tally {
  const [first, ...others] = tallies as [Tally, ...Tally[]];
  const merged = { ...first, end: tallies.at(-1)!.end, meets: new Uint8Array(0), ranges: emptyRanges() };
  const sums = ["failing", "alone", "uncertain", "eased", "partMeeting", "partFailing"] as const;
  const own = Object.fromEntries(sums.map((name) => [name, first[name].slice()]));
  const [leastShare, leastNumber] = [first.leastShare.slice(), first.leastNumber.slice()];
  for (const tally of others) {
    merged.meetingByBestEstimate += tally.meetingByBestEstimate;
    merged.meeting += tally.meeting;
    merged.meetingAt95 += tally.meetingAt95;
    for (const name of sums) addTo(own[name]!, tally[name]);
    // Earlier stretches hold the lower numbers, which win where shares are equal.
    tally.leastShare.forEach((share, slot) => {
      if (share >= leastShare[slot]!) return;
      leastShare[slot] = share;
      leastNumber[slot] = tally.leastNumber[slot]!;
    });
  }
  for (const tally of tallies) mergeRanges(merged.ranges, tally.ranges);
  return {
    ...merged,
    ...own,
    leastShare,
    leastNumber,
    fronts: mergedFronts(tallies),
    misses: nearest(tallies, misses),
  };
}

function addTo(sum: Float64Array, more: Float64Array): void {
  for (let i = 0; i < sum.length; i++) sum[i]! += more[i]!;
}

function mergeRanges(into: Record<Criterion, Range>, from: Record<Criterion, Range>): void {
  for (const [criterion, { least, greatest, endless }] of Object.entries(from) as [Criterion, Range][]) {
    if (Number.isFinite(least)) widen(into[criterion], least);
    if (Number.isFinite(greatest)) widen(into[criterion], greatest);
    into[criterion].endless ||= endless;
  }
}

function mergedFronts(tallies: readonly Tally[]): Tally["fronts"] {
  return FRONT_PAIRS.map(([x, y], pair) => {
    const front = new ParetoFront(QUANTITY_SENSE[x], QUANTITY_SENSE[y]);
    for (const { fronts } of tallies) front.merge(fronts[pair]!.points, fronts[pair]!.of);
    return { points: front.points, of: front.of };
  });
}

function nearest(tallies: readonly Tally[], room: number): readonly Miss[] {
  const best = new Best<Miss>(room);
  for (const miss of tallies.flatMap(({ misses }) => misses)) best.add(miss.shortfall, miss.number, miss);
  return best.items;
}

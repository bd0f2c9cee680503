import type { ChartSeries, ChartSpec } from "./chartSpec.ts";
import { legendEntries } from "./legendEntries.ts";
import { xRange, yRange } from "./ranges.ts";

/** A number that stands at a curve and before its name in the legend, so that ten curves are told apart without colour. */
export interface Tag {
  readonly number: number;
  /** The series whose end carries the number. */
  readonly series: ChartSeries;
}

/** The numbers of the entries of a legend, from 1 or as `numbered` names them; a limit is a region and has none. */
export function tagsOf({ series, numbered = false }: Pick<ChartSpec, "series" | "numbered">): Tag[] {
  if (numbered === false) return [];
  const names = numbered === true ? numberedNames(series) : numbered;
  return legendEntries(series).flatMap(({ name, ids, shown }) => {
    const number = names.indexOf(name) + 1;
    return number === 0 || shown.kind === "limit" ? [] : [{ number, series: lineOf(series, ids) ?? shown }];
  });
}

/** Names of the legend entries that carry numbers, in their order. */
export function numberedNames(series: readonly ChartSeries[]): string[] {
  return legendEntries(series)
    .filter(({ shown }) => shown.kind !== "limit")
    .map(({ name }) => name);
}

function lineOf(series: readonly ChartSeries[], ids: readonly string[]): ChartSeries | undefined {
  return series.find(({ id, kind }) => ids.includes(id) && (kind === "fit" || kind === "prediction"));
}

/** Curves whose ends have room for their numbers on top of them; more stand in a column beside the picture. */
const MOST_ON_ENDS = 6;
/** Part of the width of the picture that counts as its end. */
export const END_SHARE = 0.04;

/** Layout and tags ask at every drawing of one picture; it is answered once. */
const crowded = new WeakMap<ChartSpec, boolean>();

/** Nearer ends, as a part of the height of the picture, would lay the number of one curve on the other. */
const LEAST_APART = 0.07;

/** Whether so many curves end where the picture ends, or two so near one another, that their numbers need a column of their own. */
export function isCrowded(spec: ChartSpec): boolean {
  const known = crowded.get(spec) ?? endsAreCrowded(spec);
  crowded.set(spec, known);
  return known;
}

function endsAreCrowded(spec: ChartSpec): boolean {
  const { low, high } = xRange(spec);
  const end = high - END_SHARE * (high - low);
  const reaches = ({ series }: Tag) => series.kind !== "measured" && series.points.some(({ x }) => x >= end);
  const reaching = tagsOf(spec).filter(reaches);
  return reaching.length > MOST_ON_ENDS || endsAreNear(spec, reaching);
}

function endsAreNear(spec: ChartSpec, tags: readonly Tag[]): boolean {
  return (["y", "y2"] as const).some((axis) => {
    const { low, high } = yRange(spec, axis);
    const ends = tags
      .filter(({ series }) => Boolean(series.secondAxis && spec.y2) === (axis === "y2"))
      .map(({ series }) => series.points.reduce((far, point) => (point.x > far.x ? point : far)).y)
      .sort((a, b) => a - b);
    return ends.some((y, at) => at > 0 && y - ends[at - 1]! < LEAST_APART * (high - low));
  });
}

export interface Anchor {
  readonly x: number;
  readonly y: number;
}

/**
 * Moves `anchors` up and down until no two that stand side by side are nearer than `apart`, keeping their order, within
 * `top` and `bottom` as far as there is room.
 */
export function spreadApart(
  anchors: readonly Anchor[],
  { apart, top, bottom }: { readonly apart: number; readonly top: number; readonly bottom: number },
): Anchor[] {
  const order = anchors.map((_, at) => at).sort((a, b) => anchors[a]!.y - anchors[b]!.y);
  const places = anchors.map(({ x, y }) => ({ x, y: Math.min(Math.max(y, top), bottom) }));
  const beside = (a: Anchor, b: Anchor) => Math.abs(a.x - b.x) < apart;
  push(order, places, (at, before) => {
    if (beside(at, before)) at.y = Math.max(at.y, before.y + apart);
  });
  // What was pushed over the lower edge goes back up, and takes those above with it.
  push([...order].reverse(), places, (at, before) => {
    at.y = Math.min(at.y, bottom);
    if (before.y > bottom) before.y = bottom;
    if (beside(at, before)) at.y = Math.min(at.y, before.y - apart);
  });
  return places.map((place) => ({ ...place, y: Math.min(place.y, bottom) }));
}

function push(
  order: readonly number[],
  places: { x: number; y: number }[],
  one: (at: { x: number; y: number }, before: { x: number; y: number }) => void,
): void {
  for (const [position, at] of order.entries())
    for (const before of order.slice(0, position)) one(places[at]!, places[before]!);
}

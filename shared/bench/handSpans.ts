import type { Recipe } from "../model/recipe.ts";
import { InputProblem } from "../quantity/problem.ts";
import { searchedSpans } from "./plateauSearch.ts";
import type { FoundSpan, PlateauSearch, PlateauSpans } from "./plateauSpans.ts";
import { remembered } from "./remembered.ts";
import type { RowSpan } from "./rest.ts";

import { rowAt, type Timeline } from "./timeline.ts";

type HandSpan = Extract<Recipe["plateaus"], { mode: "spans" }>["spans"][number];

/**
 * The plateaus as a person set them. The search runs all the same, but only to say how long each took to settle and what
 * it would have taken besides or passed over: it never changes them.
 * Throws InputProblem `bench.empty-span`.
 */
export function handSpans(spans: readonly HandSpan[], search: PlateauSearch): PlateauSpans {
  const starts = new Set(spans.map(({ start }) => start));
  const rows = spans.map((span, i) => rowsOf(span, i, search.timeline, starts.has(span.end)));
  const dependsOn = search.tare.dependsOn;
  // It sees the same wherever a person draws an edge.
  const seen =
    search.timeline.kind === "readings"
      ? null
      : remembered(search.rest, { stage: "searched", dependsOn }, () => searchedSpans(search));
  const found = rows.map((row, i): FoundSpan => {
    const step = seen?.steps.find(({ span }) => contains(span, middleOf(row)));
    return { ...row, foundBy: spans[i]!.origin ?? "hand", settlingTime: step?.settlingTime ?? null };
  });
  const free = ({ span }: { span: RowSpan }) => !rows.some((row) => overlap(row, span));
  const offered = (seen?.spans ?? []).map((span) => ({ span, because: "not among the plateaus set by hand" }));
  const passedOver = [...(seen?.rejected ?? []).filter(({ because }) => because !== "at rest"), ...offered].filter(
    free,
  );
  return { spans: found, rejected: [], passedOver, foundBy: "recipe" };
}

/** `shared`: another plateau starts where this one ends, and a reading at that very time is its. */
function rowsOf({ start, end }: HandSpan, index: number, timeline: Timeline, shared: boolean): RowSpan {
  const from = rowAt(timeline, start);
  let to = from;
  while (to < timeline.times.length && (timeline.times[to]! < end || (timeline.times[to] === end && !shared))) to++;
  if (to > from) return { from, to };
  throw new InputProblem({
    code: "bench.empty-span",
    where: `recipe.plateaus.spans[${index}]`,
    found: `no row of the log lies between ${start} s and ${end} s`,
    needed: `a span inside the log, ${timeline.times[0]!.toPrecision(4)} s to ${timeline.times.at(-1)!.toPrecision(4)} s`,
    mend: "Set the span again, or go back to automatic plateaus",
  });
}

const middleOf = ({ from, to }: RowSpan) => (from + to - 1) / 2;
const contains = ({ from, to }: RowSpan, row: number) => row >= from && row < to;
/** A sliver in common is none: edges of neighbours touch. */
const overlap = (a: RowSpan, b: RowSpan) =>
  Math.min(a.to, b.to) - Math.max(a.from, b.from) > 0.25 * Math.min(a.to - a.from, b.to - b.from);

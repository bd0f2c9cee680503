import type { Recipe } from "../model/recipe.ts";
import type { PlateauFinding } from "../model/reduction.ts";
import type { Blocks } from "./blocks.ts";
import { type Channels, valueAt } from "./channels.ts";
import { handSpans } from "./handSpans.ts";
import { searchedSpans } from "./plateauSearch.ts";
import type { Rest, RowSpan } from "./rest.ts";
import { sweepBins } from "./sweepBins.ts";
import type { TareLine } from "./tareLine.ts";
import type { Timeline } from "./timeline.ts";

/** Why a stretch did not become a plateau. */
export type Rejection = "at rest" | "too short" | "settled too late" | "still settling" | "ramp" | "without readings";

export interface Rejected {
  readonly span: RowSpan;
  readonly because: Rejection;
}

/** Rows of one plateau and how they came to be one. */
export interface FoundSpan extends RowSpan {
  readonly foundBy: PlateauFinding;
  /** From the step until it had settled, s; null where no step or no clock tells it. */
  readonly settlingTime: number | null;
}

export interface PlateauSpans {
  readonly spans: readonly FoundSpan[];
  readonly rejected: readonly Rejected[];
  /** Where plateaus were set by hand: what the search would have passed over or taken besides them, and why. */
  readonly passedOver: readonly { readonly span: RowSpan; readonly because: string }[];
  /** What the stretches were found by. */
  readonly foundBy: "command" | "rotation rate" | "rows" | "recipe" | "bins of rotation rate";
}

/** Everything the search looks at. */
export interface PlateauSearch {
  readonly channels: Channels;
  readonly timeline: Timeline;
  readonly blocks: Blocks;
  readonly rest: Rest;
  readonly tare: TareLine;
  readonly recipe: Recipe;
}

/**
 * Steady stretches of the run: those set by hand, one a row in a hand-written table, or those found in the log; bins of
 * rotation rate where the recipe says that the run is a sweep.
 */
export function plateauSpansOf(search: PlateauSearch): PlateauSpans {
  const { recipe, timeline } = search;
  if (recipe.plateaus.mode === "spans") return handSpans(recipe.plateaus.spans, search);
  if (timeline.kind === "readings") return readingRows(search);
  if (recipe.plateaus.mode === "sweep") return sweepBins(search);
  const { foundBy, spans, rejected } = searchedSpans(search);
  return { spans, rejected, passedOver: [], foundBy: foundBy === "command" ? "command" : "rotation rate" };
}

function readingRows({ channels, timeline, rest }: PlateauSearch): PlateauSpans {
  const spans: FoundSpan[] = [];
  const rejected: Rejected[] = [];
  for (let row = 0; row < timeline.times.length; row++) {
    const rate = Math.abs(valueAt(channels.rotationRate, row));
    const span = { from: row, to: row + 1 };
    if (rate <= rest.rateLimit) rejected.push({ span, because: "at rest" });
    else if (Number.isFinite(rate) && Number.isFinite(valueAt(channels.thrust, row))) {
      spans.push({ ...span, foundBy: "row", settlingTime: null });
    } else rejected.push({ span, because: "without readings" });
  }
  return { spans, rejected, passedOver: [], foundBy: "rows" };
}

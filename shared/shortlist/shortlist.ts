import type { PartsBox, ShortlistRequest, ShortlistRequirement } from "../model/shortlist.ts";
import type { Shortlist } from "../model/shortlistResult.ts";
import { sizesOf } from "./boxContents.ts";
import { combinationCount, type Sizes } from "./combinations.ts";
import { finishedShortlist } from "./finish.ts";
import type { PartRecords } from "./partRecords.ts";
import { bestOf, rankStretch } from "./rank.ts";
import { recordsOf } from "./recordsOf.ts";
import { requireBox, requireSize } from "./requireBox.ts";
import { type Scoring, weightShares } from "./score.ts";
import { searchStretch } from "./search.ts";
import { mergedTally, type Tally } from "./tally.ts";

/** What a search begins with. */
type Asked = Pick<ShortlistRequest, "requirement" | "box">;

/**
 * How many of each kind a request tries, checked without a look at the parts themselves.
 *
 * Throws   InputProblem as `requireBox` and `requireSize`.
 */
export function checkedSizes({ requirement, box }: Asked): Sizes {
  requireBox(requirement, box);
  const sizes = sizesOf(box);
  requireSize(sizes);
  return sizes;
}

/**
 * Records of a request's parts.
 *
 * Throws   InputProblem as `checkedSizes`, and told from the part that can not be used.
 */
export function preparedRecords(asked: Asked): PartRecords {
  checkedSizes(asked);
  return recordsOf(asked.requirement, asked.box);
}

/** First combination of each of `count` stretches that together hold all of them, and the end of the last. */
export function stretches(combinations: number, count: number): { readonly start: number; readonly end: number }[] {
  return Array.from({ length: count }, (_, k) => ({
    start: Math.floor((k * combinations) / count),
    end: Math.floor(((k + 1) * combinations) / count),
  })).filter(({ start, end }) => end > start);
}

/** How the scores of a search are made, once all that meet are known. */
export function scoringOf({ weights }: ShortlistRequirement, { ranges }: Tally): Scoring {
  return { ranges, weights: weightShares(weights) };
}

/** Share of the first pass in the time of a search; the second looks only at what meets. */
const SEARCH_SHARE = 0.8;

/**
 * Every combination of a parts box against a requirement: those that meet it, ranked; why the others fail; the nearest
 * misses; what became of each part; fronts of two quantities. In two passes over the combinations and in constant memory:
 * nothing is kept of a combination but a bit, unless it is told of.
 *
 *   score = Σ w_i s_i,   s_i = (x_i − worst_i)/(best_i − worst_i)   over those that meet,   Σ w_i = 1
 *
 * Source   operating point as shared/drive; weighted sum of normalised criteria, common practice, no source.
 * Assumes  as shared/drive: all thrusters alike, at one throttle, in the steady state.
 * Range    up to 50 million combinations.
 * Error    counts are exact: every combination is judged (see `searchStretch`). Probabilities are first order.
 * Yields   the share that is done.
 * Throws   InputProblem as `preparedRecords`.
 */
export function* shortlistInSteps(request: ShortlistRequest): Generator<number, Shortlist> {
  const { requirement, rows, misses } = request;
  const records = preparedRecords(request);
  const whole = { start: 0, end: combinationCount(records.sizes), misses };
  const tally = yield* scaledProgress(searchStretch(requirement, records, whole), 0, SEARCH_SHARE);
  const scoring = scoringOf(requirement, tally);
  const ranking = rankStretch(requirement, records, tally, scoring, rows);
  const ranked = yield* scaledProgress(ranking, SEARCH_SHARE, 1 - SEARCH_SHARE);
  return finishedShortlist(request, records, mergedTally([tally], misses), bestOf([ranked], rows));
}

function* scaledProgress<T>(work: Generator<number, T>, from: number, share: number): Generator<number, T> {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
    yield from + share * step.value;
  }
}

/** How a caller hears of the search. */
export interface ShortlistHooks {
  /** Told the share that is done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  /** Asked between two steps; true ends the search. */
  readonly isCancelled?: () => boolean;
}

/** `shortlistInSteps` to its end with the usual lengths of lists; null where it was cancelled. */
export function shortlist(
  requirement: ShortlistRequirement,
  box: PartsBox,
  { onProgress = () => {}, isCancelled = () => false }: ShortlistHooks = {},
): Shortlist | null {
  const work = shortlistInSteps({ requirement, box, rows: 25, misses: 12 });
  for (;;) {
    if (isCancelled()) return null;
    const step = work.next();
    if (step.done) return step.value;
    onProgress(step.value);
  }
}

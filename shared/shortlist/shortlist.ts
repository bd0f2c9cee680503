import type { ShortlistRequest, ShortlistRequirement } from "../model/shortlist.ts";
import { sizesOf } from "./boxContents.ts";
import type { Sizes } from "./combinations.ts";
import type { PartRecords } from "./partRecords.ts";
import { recordsOf } from "./recordsOf.ts";
import { requireBox, requireSize } from "./requireBox.ts";
import { type Scoring, weightShares } from "./score.ts";
import type { Tally } from "./tally.ts";

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

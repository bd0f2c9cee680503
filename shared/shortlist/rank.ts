import type { ShortlistRequirement } from "../model/shortlist.ts";
import { Best } from "./best.ts";
import { Candidate } from "./candidate.ts";
import type { PartRecords } from "./partRecords.ts";
import { type Scoring, scoreOf } from "./score.ts";
import type { Tally } from "./tally.ts";
import { valuesAtDemand, valuesOf } from "./values.ts";

/** Combinations between two reports of progress. */
const STEP = 20_000;

/** One of the best of a stretch. */
export interface Ranked {
  readonly number: number;
  readonly score: number;
  /** Its propeller is one of a published series, not one that is kept. */ readonly isYardstick: boolean;
}

/**
 * The best of those that meet in a stretch. A second pass, because what a score is measured by, the worst and the best of
 * all that meet, is known only after the first; so nothing has to be kept between but one bit for each combination.
 *
 * Yields   the share that is done.
 */
export function* rankStretch(
  requirement: ShortlistRequirement,
  records: PartRecords,
  { start, end, meets }: Pick<Tally, "start" | "end" | "meets">,
  scoring: Scoring,
  rows: number,
): Generator<number, readonly Ranked[]> {
  const candidate = new Candidate(records, requirement);
  const [kept, yardsticks] = [new Best<Ranked>(rows), new Best<Ranked>(rows)];
  const isTimed = requirement.endurance !== undefined;
  const values = scoring.weights.thrustMargin > 0 ? valuesOf : valuesAtDemand;
  for (let number = start; number < end; ) {
    const until = Math.min(end, number + STEP);
    for (; number < until; number++) {
      const place = number - start;
      if ((meets[place >> 3]! & (1 << (place & 7))) === 0) continue;
      if (isTimed) candidate.take(number);
      else candidate.put(number);
      const score = scoreOf(values(candidate), scoring);
      const isYardstick = records.propellers[candidate.places.propeller]!.document.source === "series";
      const best = isYardstick ? yardsticks : kept;
      if (best.wants(-score, number)) best.add(-score, number, { number, score, isYardstick });
    }
    yield (number - start) / (end - start);
  }
  return [...kept.items, ...yardsticks.items];
}

/** Share of the rows that yardsticks may take from propellers that are kept. */
const YARDSTICKS = 0.2;

/**
 * The best of several stretches: those with a propeller that is kept first, so that a yardstick never stands before a
 * measurement; of the yardsticks the best, to be seen beside them.
 */
export function bestOf(ranked: readonly (readonly Ranked[])[], rows: number): readonly Ranked[] {
  const [kept, yardsticks] = [new Best<Ranked>(rows), new Best<Ranked>(rows)];
  for (const one of ranked.flat()) (one.isYardstick ? yardsticks : kept).add(-one.score, one.number, one);
  const room = Math.max(rows - kept.items.length, Math.floor(YARDSTICKS * rows));
  const shown = yardsticks.items.slice(0, room);
  return [...kept.items.slice(0, rows - shown.length), ...shown];
}

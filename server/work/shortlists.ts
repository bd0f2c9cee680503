import { setMaxListeners } from "node:events";
import type { ShortlistRequest } from "../../shared/model/shortlist.ts";
import type { Shortlist } from "../../shared/model/shortlistResult.ts";
import { combinationCount } from "../../shared/shortlist/combinations.ts";
import { bestOf } from "../../shared/shortlist/rank.ts";
import { checkedSizes, scoringOf, stretches } from "../../shared/shortlist/shortlist.ts";
import { mergedTally } from "../../shared/shortlist/tally.ts";
import type { WorkOptions, WorkPool } from "./workPool.ts";

/** Combinations of one job: a fraction of a second, so that other work comes in between and a cancellation is heard. */
const STRETCH = 100_000;
/** Stretches a thread gets at least, so that all end at about the same time. */
const FOR_EACH = 4;
/** Share of the judging in the whole; the ranking looks only at what meets. */
const JUDGING_SHARE = 0.8;

type Pool = Pick<WorkPool, "run" | "threads">;

/**
 * A shortlist on all threads of the pool. The stretches are put together in their order, so that the outcome is the same
 * to the last digit for any number of threads.
 *
 * Throws   InputProblem as `checkedSizes`, and of a part that can not be used; WorkCancelled and WorkFailed as the pool.
 */
export async function shortlistOnPool(
  pool: Pool,
  request: ShortlistRequest,
  { signal, onProgress = () => {} }: WorkOptions = {},
): Promise<Shortlist> {
  const combinations = combinationCount(checkedSizes(request));
  const count = Math.max(1, Math.min(combinations, Math.max(FOR_EACH * pool.threads, combinations / STRETCH)));
  const parts = stretches(combinations, Math.ceil(count));
  // Every stretch waits on the one signal of the search.
  if (signal !== undefined) setMaxListeners(0, signal);
  const options = signal === undefined ? {} : { signal };
  const tallies = await inTurn(pool, parts, {
    start: ({ start, end }, tell) =>
      pool.run({ kind: "shortlistPart", request, start, end }, { ...options, onProgress: tell }),
    onProgress: (share) => onProgress(JUDGING_SHARE * share),
  });
  const tally = mergedTally(tallies, request.misses);
  const scoring = scoringOf(request.requirement, tally);
  const ranked = await inTurn(pool, tallies, {
    start: ({ start, end, meets, meeting }, tell) =>
      meeting === 0
        ? Promise.resolve([])
        : pool.run(
            { kind: "shortlistRank", request, stretch: { start, end, meets }, scoring },
            { ...options, onProgress: tell },
          ),
    onProgress: (share) => onProgress(JUDGING_SHARE + (1 - JUDGING_SHARE) * share),
  });
  return pool.run({ kind: "shortlistEnd", request, tally, ranked: bestOf(ranked, request.rows) }, options);
}

interface Turn<P, T> {
  readonly start: (part: P, onProgress: (share: number) => void) => Promise<T>;
  readonly onProgress: (share: number) => void;
}

/** Work on each part, no more at a time than there are threads: what others ask meanwhile comes in between. */
async function inTurn<P, T>(pool: Pool, parts: readonly P[], { start, onProgress }: Turn<P, T>): Promise<T[]> {
  const outcomes: T[] = new Array(parts.length);
  const shares = new Float64Array(parts.length);
  let next = 0;
  const tell = (place: number, share: number) => {
    shares[place] = share;
    onProgress(shares.reduce((sum, one) => sum + one, 0) / parts.length);
  };
  const follow = async () => {
    while (next < parts.length) {
      const place = next++;
      outcomes[place] = await start(parts[place]!, (share) => tell(place, share));
      tell(place, 1);
    }
  };
  await Promise.all(Array.from({ length: pool.threads }, follow));
  return outcomes;
}

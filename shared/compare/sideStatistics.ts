import { moments } from "../numeric/moments.ts";
import type { RunQuantity } from "./runQuantity.ts";

/** Mean of one side of a comparison, in logarithms and plain, with the spread between and inside its runs. */
export interface SideStatistics {
  readonly runs: number;
  readonly meanLog: number;
  readonly mean: number;
  /** Variance of a run's logarithm from run to run; null for a single run. */
  readonly betweenRuns: number | null;
  /** Variance from run to run of the plain value, relative to the mean squared; null for a single run. */
  readonly betweenRunsPlain: number | null;
  /** Variance of a run's logarithm that the doubt inside the runs alone would give, mean over the runs. */
  readonly withinRuns: number;
  /** Degrees of freedom behind the doubt inside a single run. */
  readonly degreesOfFreedomWithin: number;
  /** Effect on the mean logarithm of one standard uncertainty of each cause that is not in the spread, by key. */
  readonly common: ReadonlyMap<string, number>;
}

/**
 * Statistics of one side. A common cause that one run alone has (`occursIn` counts the runs of both sides) is a
 * further reason for runs to differ: where there are replicates it shows in their spread, so it counts inside the run;
 * for a single run, and for causes that several runs share, no spread shows it, so it is kept apart in `common`.
 */
export function sideStatistics(runs: readonly RunQuantity[], occursIn: ReadonlyMap<string, number>): SideStatistics {
  const logs = moments(runs.map((run) => Math.log(run.value)));
  const plain = moments(runs.map((run) => run.value));
  const replicated = runs.length > 1;
  const common = new Map<string, number>();
  let within = 0;
  for (const run of runs) {
    within += run.independent ** 2;
    for (const [key, effect] of run.common) {
      if (replicated && occursIn.get(key) === 1) within += effect ** 2;
      else common.set(key, (common.get(key) ?? 0) + effect / runs.length);
    }
  }
  return {
    runs: runs.length,
    meanLog: logs.mean,
    mean: plain.mean,
    betweenRuns: replicated ? logs.variance : null,
    betweenRunsPlain: replicated ? plain.variance / plain.mean ** 2 : null,
    withinRuns: within / runs.length,
    degreesOfFreedomWithin: runs[0]!.degreesOfFreedom,
    common,
  };
}

/** In how many runs each common cause occurs. */
export function occurrences(runs: readonly RunQuantity[]): ReadonlyMap<string, number> {
  const count = new Map<string, number>();
  for (const { common } of runs) for (const key of common.keys()) count.set(key, (count.get(key) ?? 0) + 1);
  return count;
}

/** Variance of the difference of two mean logarithms from common causes; what both sides share cancels. */
export function commonVariance(a: SideStatistics, b: SideStatistics): number {
  let variance = 0;
  for (const key of new Set([...a.common.keys(), ...b.common.keys()])) {
    variance += ((a.common.get(key) ?? 0) - (b.common.get(key) ?? 0)) ** 2;
  }
  return variance;
}

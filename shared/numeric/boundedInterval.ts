import { finite, positive } from "../quantity/domain.ts";
import { NORMAL_975 } from "../quantity/uncertain.ts";
import { normalProbability } from "./normalProbability.ts";
import { bracketedRoot } from "./rootFinding.ts";

export interface BoundedEstimate {
  /** Estimate as if there were no bound: it may lie below. */ readonly estimate: number;
  readonly standardUncertainty: number;
  /** Least value that the quantity can have. */ readonly least: number;
}

const COVERED = 0.95;
/** Bound and estimate so many standard uncertainties apart know nothing of each other; beyond, the tails are lost in rounding. */
const FAR = 6;

/**
 * 95 % interval of a quantity that can not lie below `least`, from a normal estimate that can: the values that the profiled
 * likelihood ratio does not reject. Nowhere below the bound, never empty, and the usual ± 1.96 u far from it.
 *
 *   R(x, m) = p(x | m)/p(x | max(x, 0)),   m is kept where P(R(X, m) > R(x, m) | m) <= 0.95     all in u above the bound
 *
 * Source   Feldman & Cousins, Unified approach to the classical statistical analysis of small signals, Physical Review D 57
 *          (1998) 3873, section IV B and table X, from memory.
 * Assumes  normal errors of known standard uncertainty.
 * Error    covers 95 % wherever the true value lies, on the bound too.
 * Throws   OutOfDomain for an uncertainty that is not positive.
 *
 * @example boundedInterval({ estimate: 1, standardUncertainty: 1, least: 0 })[1] // 2.95996
 */
export function boundedInterval({ estimate, standardUncertainty, least }: BoundedEstimate): [number, number] {
  const u = positive(standardUncertainty, "standard uncertainty", "");
  const x = (finite(estimate, "estimate", "") - finite(least, "least value", "")) / u;
  if (x > FAR) return [estimate - NORMAL_975 * u, estimate + NORMAL_975 * u];
  const best = Math.max(0, x);
  const rejected = (m: number) => chanceOfBetter(x, m) - COVERED;
  const low = best > 0 && rejected(0) > 0 ? bracketedRoot(rejected, 0, best).root : 0;
  const high = bracketedRoot(rejected, best, best + FAR).root;
  return [least + u * low, least + u * high];
}

/** Chance, where `m` is true, of an estimate with a greater likelihood ratio than `x` has; 0 for x = m. */
function chanceOfBetter(x: number, m: number): number {
  // -2 ln R: (x - m)² above the bound, m² - 2 x m below, where the best m is 0.
  const q = x >= 0 ? (x - m) ** 2 : m * m - 2 * x * m;
  const reach = Math.sqrt(q);
  if (m >= reach) return normalProbability(reach) - normalProbability(-reach);
  const from = (m * m - q) / (2 * m) - m;
  return normalProbability(reach) - (Number.isFinite(from) ? normalProbability(from) : 0);
}

import type { VariantRatio } from "../model/comparison.ts";
import { combined, known } from "../numeric/combined.ts";
import { fiellerInterval } from "../numeric/fieller.ts";
import { twoSidedPValue } from "../numeric/studentT.ts";
import type { UncertaintyPart } from "../numeric/welchSatterthwaite.ts";
import { type RunQuantity, UNLIMITED_DEGREES_OF_FREEDOM } from "./runQuantity.ts";
import { commonVariance, occurrences, type SideStatistics, sideStatistics } from "./sideStatistics.ts";

/**
 * Variant over baseline of one quantity, on the logarithmic scale, with the run as the unit of replication: what a
 * re-mounted propeller does differently is part of the doubt, however many samples a run has.
 *
 *   ln r = mean ln(variant) − mean ln(baseline),   u² = u_V² + u_B² + Σ_k (a_Vk − a_Bk)²
 *
 * - "replicates" (two or more runs each): u_side² = s²/n with s² the variance of the logarithms from run to run and
 *   n − 1 degrees of freedom; Welch's test. Runs that by luck agree better than their own doubt allows do not narrow
 *   the interval: s² is taken not smaller than the mean variance inside the runs. The degrees of freedom stay n − 1 all
 *   the same, since luck in two or three runs says nothing of how well the spread is known. So the interval is never
 *   narrower than either analysis alone.
 * - "pooledReplicates" (one side has a single run): the other side's s² serves for both, u² = s² (1 + 1/n).
 * - "withinRun" (single runs): scatter of the points inside each run with its own degrees of freedom; a re-mounting
 *   could move the ratio by more.
 *
 * a_k is the effect of a common cause k (load-cell calibration, diameter, density ...) on the mean: where both sides
 * share the key it cancels, else it is added in full with unlimited degrees of freedom.
 *
 * Source   Welch, Biometrika 34 (1947) 28; Welch-Satterthwaite combination, JCGM 100:2008, G.4; Fieller, J. R. Stat.
 *          Soc. B 16 (1954) 175, as a cross-check on plain means.
 * Assumes  logarithms of runs roughly normal; for "pooledReplicates" the same spread on both sides.
 * Range    one or more runs on each side, values greater than 0. `adjustedPValue` is that of this ratio alone.
 * Throws   OutOfDomain for no runs on a side.
 */
export function variantRatio(baseline: readonly RunQuantity[], variant: readonly RunQuantity[]): VariantRatio {
  const occursIn = occurrences([...baseline, ...variant]);
  const [B, V] = [sideStatistics(baseline, occursIn), sideStatistics(variant, occursIn)];
  const shared = commonVariance(V, B);
  const found = doubts(B, V, shared);
  const logRatio = V.meanLog - B.meanLog;
  const { standardUncertainty: u, degreesOfFreedom: dof, expanded95: half } = combined(found.parts);
  const pValue = u === 0 ? Number(logRatio === 0) : twoSidedPValue(logRatio / u, dof);
  const value = Math.exp(logRatio);
  return {
    value,
    standardUncertainty: value * u,
    interval95: [Math.exp(logRatio - half), Math.exp(logRatio + half)],
    degreesOfFreedom: Math.min(dof, UNLIMITED_DEGREES_OF_FREEDOM),
    pValue,
    adjustedPValue: pValue,
    basis: found.basis,
    parts: {
      withinRuns: Math.sqrt(within(V) + within(B)),
      remounting: found.basis === "withinRun" ? null : Math.sqrt(found.remounting),
      shared: Math.sqrt(shared),
    },
    fieller95: fieller(B, V, found, shared),
  };
}

interface Doubts {
  readonly basis: VariantRatio["basis"];
  /** Variance of the mean logarithm of the variant and of the baseline, common causes apart. */
  readonly variances: readonly [number, number];
  /** Part of both together that the doubt inside the runs does not explain. */
  readonly remounting: number;
  /** Independent standard uncertainties of ln r. */
  readonly parts: readonly UncertaintyPart[];
}

function doubts(B: SideStatistics, V: SideStatistics, shared: number): Doubts {
  const [common] = known(Math.sqrt(shared)) as [UncertaintyPart];
  if (B.betweenRuns !== null && V.betweenRuns !== null) {
    const variances = [spread(V, V.betweenRuns) / V.runs, spread(B, B.betweenRuns) / B.runs] as const;
    return {
      basis: "replicates",
      variances,
      remounting: remounting(variances, V, B),
      parts: [part(variances[0], V.runs - 1), part(variances[1], B.runs - 1), common],
    };
  }
  const spreadSeen = V.betweenRuns ?? B.betweenRuns;
  if (spreadSeen === null) {
    const variances = [V.withinRuns, B.withinRuns] as const;
    return {
      basis: "withinRun",
      variances,
      remounting: 0,
      parts: [part(variances[0], V.degreesOfFreedomWithin), part(variances[1], B.degreesOfFreedomWithin), common],
    };
  }
  const variances = [spread(V, spreadSeen) / V.runs, spread(B, spreadSeen) / B.runs] as const;
  // One estimate of the spread serves both sides, so its degrees of freedom are those of the side that has it.
  const pooled = part(variances[0] + variances[1], Math.max(V.runs, B.runs) - 1);
  return {
    basis: "pooledReplicates",
    variances,
    remounting: remounting(variances, V, B),
    parts: [pooled, common],
  };
}

/** Variance of the mean logarithm of a side from the doubt inside its runs. */
const within = ({ withinRuns, runs }: SideStatistics) => withinRuns / runs;

/** What is left of the variances of both sides; not less than 0, as `spread` is never below the doubt inside the runs. */
function remounting([ofVariant, ofBaseline]: readonly [number, number], V: SideStatistics, B: SideStatistics): number {
  return Math.max(0, ofVariant - within(V)) + Math.max(0, ofBaseline - within(B));
}

/** Variance of one run, from run to run, but not less than the doubt inside the runs explains. */
function spread({ withinRuns }: SideStatistics, betweenRuns: number): number {
  return Math.max(betweenRuns, withinRuns);
}

function part(variance: number, degreesOfFreedom: number): UncertaintyPart {
  return { standardUncertainty: Math.sqrt(variance), degreesOfFreedom };
}

/** Fieller's interval for the ratio of plain means; common causes are carried by the numerator. */
function fieller(B: SideStatistics, V: SideStatistics, found: Doubts, shared: number): VariantRatio["fieller95"] {
  let [ofVariant, ofBaseline] = found.variances;
  let parts = found.parts;
  if (V.betweenRunsPlain !== null && B.betweenRunsPlain !== null) {
    ofVariant = spread(V, V.betweenRunsPlain) / V.runs;
    ofBaseline = spread(B, B.betweenRunsPlain) / B.runs;
    parts = [part(ofVariant, V.runs - 1), part(ofBaseline, B.runs - 1), ...known(Math.sqrt(shared))];
  }
  return fiellerInterval({
    numerator: V.mean,
    denominator: B.mean,
    varianceNumerator: V.mean ** 2 * (ofVariant + shared),
    varianceDenominator: B.mean ** 2 * ofBaseline,
    coverageFactor: combined(parts).coverageFactor,
  });
}

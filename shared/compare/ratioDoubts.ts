import type { SpreadChoice, VariantRatio } from "../model/comparison.ts";
import { known } from "../numeric/combined.ts";
import { type VarianceEstimate, varianceRatioPValue } from "../numeric/varianceRatio.ts";
import type { UncertaintyPart } from "../numeric/welchSatterthwaite.ts";
import type { SideStatistics } from "./sideStatistics.ts";

/** Level of the test that tells two spreads apart; see variantRatio for what was measured with it. */
export const SPREADS_DIFFER = 0.1;

/** What the doubt of a ratio rests on and how large it is; see variantRatio for the statistics. */
export interface RatioDoubts {
  readonly basis: VariantRatio["basis"];
  /** Which spread serves whom; null where not both sides were mounted twice. */
  readonly spreads: VariantRatio["spreads"];
  /** Variance of the mean logarithm of the variant and of the baseline, common causes apart. */
  readonly variances: readonly [number, number];
  /** Part of both together that the doubt inside the runs does not explain. */
  readonly remounting: number;
  /** Independent standard uncertainties of ln r. */
  readonly parts: readonly UncertaintyPart[];
}

/** What is known of two variants, in logarithms. */
export interface ComparedSides {
  readonly baseline: SideStatistics;
  readonly variant: SideStatistics;
  /** Variance of ln r from causes that the runs of one side share and the other does not. */
  readonly shared: number;
}

/** The doubt of ln r by the number of mountings of each side and by which spread is to serve whom; see variantRatio. */
export function ratioDoubts(sides: ComparedSides, choice: SpreadChoice): RatioDoubts {
  const { baseline: B, variant: V } = sides;
  if (B.betweenRuns !== null && V.betweenRuns !== null) {
    const spreads = judged(spreadOf(V, V.betweenRuns), spreadOf(B, B.betweenRuns), choice);
    const doubts =
      spreads.used === "pooled" ? pooled(sides, pooledVariance(V, B), dofOf(V) + dofOf(B)) : separate(sides);
    return { ...doubts, basis: "replicates", spreads };
  }
  const spreadSeen = V.betweenRuns ?? B.betweenRuns;
  if (spreadSeen === null) return { ...insideRuns(sides), basis: "withinRun", spreads: null };
  // The degrees of freedom are those of the side that has a spread.
  const doubts = pooled(sides, spreadSeen, Math.max(V.runs, B.runs) - 1);
  return { ...doubts, basis: "pooledReplicates", spreads: null };
}

type Doubts = Pick<RatioDoubts, "variances" | "remounting" | "parts">;

/** One spread serves both sides, though none is taken smaller than the doubt inside its runs explains. */
function pooled(
  { baseline: B, variant: V, shared }: ComparedSides,
  variance: number,
  degreesOfFreedom: number,
): Doubts {
  const variances = [spread(V, variance) / V.runs, spread(B, variance) / B.runs] as const;
  const parts = [part(variances[0] + variances[1], degreesOfFreedom), ...known(Math.sqrt(shared))];
  return { variances, remounting: remounting(variances, V, B), parts };
}

function separate({ baseline: B, variant: V, shared }: ComparedSides): Doubts {
  const variances = [spread(V, V.betweenRuns!) / V.runs, spread(B, B.betweenRuns!) / B.runs] as const;
  const parts = [part(variances[0], dofOf(V)), part(variances[1], dofOf(B)), ...known(Math.sqrt(shared))];
  return { variances, remounting: remounting(variances, V, B), parts };
}

function insideRuns({ baseline: B, variant: V, shared }: ComparedSides): Doubts {
  const variances = [V.withinRuns, B.withinRuns] as const;
  const parts = [
    part(variances[0], V.degreesOfFreedomWithin),
    part(variances[1], B.degreesOfFreedomWithin),
    ...known(Math.sqrt(shared)),
  ];
  return { variances, remounting: 0, parts };
}

const spreadOf = (side: SideStatistics, betweenRuns: number): VarianceEstimate => ({
  variance: spread(side, betweenRuns),
  degreesOfFreedom: dofOf(side),
});

function judged(
  ofVariant: VarianceEstimate,
  ofBaseline: VarianceEstimate,
  choice: SpreadChoice,
): NonNullable<VariantRatio["spreads"]> {
  const pValue = varianceRatioPValue(ofVariant, ofBaseline);
  const found = pValue < SPREADS_DIFFER ? "separate" : "pooled";
  const [variant, baseline] = [ofVariant, ofBaseline].map(({ variance }) => Math.sqrt(variance)) as [number, number];
  return { used: choice === "tested" ? found : choice, variant, baseline, pValue };
}

/** Of the runs of both sides about their own means. */
function pooledVariance(V: SideStatistics, B: SideStatistics): number {
  return (dofOf(V) * V.betweenRuns! + dofOf(B) * B.betweenRuns!) / (dofOf(V) + dofOf(B));
}

const dofOf = ({ runs }: SideStatistics) => runs - 1;

/** Variance of the mean logarithm of a side from the doubt inside its runs. */
export const within = ({ withinRuns, runs }: SideStatistics) => withinRuns / runs;

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

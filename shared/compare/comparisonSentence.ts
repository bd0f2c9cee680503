import type { Comparison, VariantRatio, VariantSummary } from "../model/comparison.ts";
import { formatNumber } from "../quantity/format.ts";
import { intervalInWords, ratioInWords } from "./ratioInWords.ts";

/** Level that p-values are read against, the complement of the 95 % of the intervals. */
const LEVEL = 0.05;

const COUNT_WORDS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

export interface ComparisonToTell extends Pick<Comparison, "baseline" | "variant" | "thrustCoefficientRatio"> {
  /** False where the diameters differ, so that equal rotation rate does not mean equal conditions. */
  readonly sameDiameter: boolean;
  /** Pairs that are shown together and corrected for each other. */
  readonly pairs: number;
}

/** The answer of a comparison in one or two plain sentences. */
export function comparisonSentence(told: ComparisonToTell): string {
  const { baseline, variant, thrustCoefficientRatio: ratio, sameDiameter, pairs } = told;
  const quantity = sameDiameter ? "thrust" : "thrust coefficient";
  const where = sameDiameter ? " at equal rotation rate" : "";
  if (ratio.adjustedPValue < LEVEL) {
    const gives = ratioInWords(ratio, ` times the ${quantity} of ${baseline.name}${where}`);
    return `${variant.name} gives ${gives}, ${evidence(told)}.${fiellerWords(ratio)}`;
  }
  const alone =
    ratio.pValue < LEVEL
      ? ` Alone, the interval leaves 1 out; among ${pairs} pairs shown together chance makes one like it in ${formatNumber(100 * ratio.adjustedPValue, 2)} of 100 cases (Holm).`
      : "";
  return `No difference in ${quantity} between ${variant.name} and ${baseline.name} can be claimed${where}: the ratio is ${ratioInWords(ratio)}, ${evidence(told)}.${alone}${fiellerWords(ratio)}`;
}

/** Part of the half-width by which an end of Fieller's interval must differ to be worth a word. */
const WORTH_TELLING = 0.1;

/** The cross-check on plain means, where it says something else. */
function fiellerWords({ value, interval95, fieller95 }: VariantRatio): string {
  if (fieller95 === null)
    return " On plain means (Fieller) the ratio has no interval: the baseline can not be told from nought.";
  const half = (interval95[1] - interval95[0]) / 2;
  const apart = Math.max(...interval95.map((end, i) => Math.abs(end - fieller95[i]!)));
  if (apart <= WORTH_TELLING * half) return "";
  return ` On plain means (Fieller) the interval is ${intervalInWords({ value, interval95: fieller95 })}.`;
}

function evidence({ baseline, variant, thrustCoefficientRatio: { basis } }: ComparisonToTell): string {
  switch (basis) {
    case "withinRun":
      return "from one run each: it rests on the scatter inside one run each; re-mounting was not tested";
    case "pooledReplicates": {
      const [many, single] = baseline.runs > 1 ? [baseline, variant] : [variant, baseline];
      return `one mounting of ${single.name}, whose spread is taken to be that of the ${mountings(many)} of ${many.name}`;
    }
    case "replicates":
      return baseline.runs === variant.runs
        ? `${mountings(variant)} each`
        : `${mountings(variant)} of ${variant.name} and ${mountings(baseline)} of ${baseline.name}`;
  }
}

function mountings({ runs }: Pick<VariantSummary, "runs">): string {
  return `${COUNT_WORDS[runs] ?? runs} mounting${runs === 1 ? "" : "s"}`;
}

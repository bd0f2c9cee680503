import type { ComparedQuantity, ComparedQuantityName, VariantRatio, VariantSummary } from "../model/comparison.ts";
import { formatNumber } from "../quantity/format.ts";
import { countInWords } from "./inWords.ts";
import { intervalInWords, ratioInWords } from "./ratioInWords.ts";

/** Level that p-values are read against, the complement of the 95 % of the intervals. */
export const LEVEL = 0.05;

export interface RatioToTell {
  readonly quantity: ComparedQuantityName;
  readonly ratio: VariantRatio;
  readonly condition: ComparedQuantity["condition"];
  readonly baseline: Pick<VariantSummary, "name" | "runs">;
  readonly variant: Pick<VariantSummary, "name" | "runs">;
  /** False where the diameters differ, so that equal rotation rate does not mean equal conditions. */
  readonly sameDiameter: boolean;
  /** Pairs that are shown together and corrected for each other. */
  readonly pairs: number;
}

/** One answer of a comparison in one or two plain sentences. */
export function ratioSentence(told: RatioToTell): string {
  const { baseline, variant, ratio, pairs } = told;
  const { verb, noun, where } = wordsOf(told);
  const outside = outsideWords(told.condition);
  if (ratio.adjustedPValue < LEVEL) {
    const gives = ratioInWords(ratio, ` times the ${noun} of ${baseline.name}${where}`);
    return `${variant.name} ${verb} ${gives}${savingWords(told)}, ${evidence(told)}.${fiellerWords(ratio)}${outside}`;
  }
  const alone =
    ratio.pValue < LEVEL
      ? ` Alone, the interval leaves 1 out; among ${pairs} pairs shown together chance makes one like it in ${formatNumber(100 * ratio.adjustedPValue, 2)} of 100 cases (Holm).`
      : "";
  return `No difference in ${noun} between ${variant.name} and ${baseline.name} can be claimed${where}: the ratio is ${ratioInWords(ratio)}, ${evidence(told)}.${alone}${fiellerWords(ratio)}${outside}`;
}

interface AnswerWords {
  readonly verb: string;
  readonly noun: string;
  readonly where: string;
}

/** Coefficients stand in for thrust and power where the diameters differ: the sentence is then about shapes. */
function wordsOf({ quantity, condition, sameDiameter }: RatioToTell): AnswerWords {
  const held =
    condition === null ? "" : ` of ${formatNumber(condition.value)}${condition.unit && ` ${condition.unit}`}`;
  const size = sameDiameter ? "" : " and diameter";
  switch (quantity) {
    case "thrustAtEqualRate":
      return sameDiameter
        ? { verb: "gives", noun: "thrust", where: " at equal rotation rate" }
        : { verb: "gives", noun: "thrust coefficient", where: "" };
    case "thrustAtEqualShaftPower":
      return { verb: "gives", noun: "thrust", where: ` at equal shaft power${size}` };
    case "thrustAtEqualElectricalPower":
      return { verb: "gives", noun: "thrust", where: ` at an equal electrical power${held}` };
    case "thrustAtEqualThrottle":
      return { verb: "gives", noun: "thrust", where: ` at an equal command${held}` };
    case "shaftPowerAtEqualThrust":
      return { verb: "takes", noun: "shaft power", where: ` at equal thrust${size}` };
    case "electricalPowerAtEqualThrust":
      return { verb: "takes", noun: "electrical power", where: ` at an equal thrust${held}` };
    case "staticMerit":
      return { verb: "has", noun: "static merit", where: "" };
  }
}

/** Power that a claimed ratio saves, as people ask for it. */
function savingWords({ quantity, ratio }: RatioToTell): string {
  const { value, interval95 } = ratio;
  if (!quantity.endsWith("PowerAtEqualThrust") || value >= 1) return "";
  const percent = (part: number) => formatNumber(100 * (1 - part), 2);
  return `, a saving of ${percent(value)} % (${percent(interval95[1])} to ${percent(interval95[0])} %)`;
}

function outsideWords(condition: ComparedQuantity["condition"]): string {
  if (condition === null || !condition.extrapolated) return "";
  const { low, high, unit } = condition;
  const shown = (value: number) => `${formatNumber(value)}${unit && ` ${unit}`}`;
  const measured =
    low < high ? `the ${shown(low)} to ${shown(high)} that both sides measured` : "what both sides measured";
  return ` This lies outside ${measured}: the curves are continued there.`;
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

function evidence({ baseline, variant, ratio: { basis, spreads } }: RatioToTell): string {
  switch (basis) {
    case "withinRun":
      return "from one run each: it rests on the scatter inside one run each; re-mounting was not tested";
    case "pooledReplicates": {
      const [many, single] = baseline.runs > 1 ? [baseline, variant] : [variant, baseline];
      return `one mounting of ${single.name}, whose spread is taken to be that of the ${mountings(many)} of ${many.name}`;
    }
    case "replicates": {
      const counts =
        baseline.runs === variant.runs
          ? `${mountings(variant)} each`
          : `${mountings(variant)} of ${variant.name} and ${mountings(baseline)} of ${baseline.name}`;
      return spreads?.used === "separate" ? `${counts}, each variant with a spread of its own` : counts;
    }
  }
}

function mountings({ runs }: Pick<VariantSummary, "runs">): string {
  return `${countInWords(runs)} mounting${runs === 1 ? "" : "s"}`;
}

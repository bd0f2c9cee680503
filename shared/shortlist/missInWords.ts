import type { CombinationName, DemandMargin } from "../model/shortlistResult.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";
import type { DemandTable } from "./demandSlots.ts";
import type { HeldSlot, Reach } from "./details.ts";
import { combinationInWords, DUTY_WORDS, marginInWords, probabilityInWords } from "./words.ts";

export interface MissToTell {
  readonly combination: CombinationName;
  readonly reaches: readonly Reach[];
  readonly failing: readonly HeldSlot[];
}

/** Demands that are told one by one, the worst first. */
const TOLD = 3;

/**
 * How a combination misses, in one sentence: for each state the thrust that is missing within the limits, then each demand
 * that is not kept.
 */
export function missInWords(table: DemandTable, { combination, reaches, failing }: MissToTell): string {
  const short = reaches.flatMap(({ duty, demanded, greatest }) => {
    const isMissed = failing.some(({ margin }) => margin.duty === duty);
    const shortOf = isMissed && greatest !== null ? demanded - greatest : 0;
    if (!(shortOf > 0)) return [];
    const state = DUTY_WORDS[duty];
    return [
      `${formatNumber(shortOf, 2)} N short ${state} within its limits: ${formatPercent(shortOf / demanded)} too little`,
    ];
  });
  const worst = [...failing].sort((a, b) => (a.margin.share ?? 0) - (b.margin.share ?? 0)).slice(0, TOLD);
  const missed = worst.map(({ slot, margin }) => marginInWords(table.slots[slot]!, margin) + notLikely(margin));
  if (failing.length > TOLD) missed.push(`${failing.length - TOLD} more`);
  return `${combinationInWords(combination)}: ${[...short, ...missed].join("; ")}.`;
}

/** A demand that is kept by the best estimate fails for want of certainty. */
function notLikely({ share, probability }: DemandMargin): string {
  if (share === null || share < 0 || probability === null) return "";
  return `, kept with a probability of ${probabilityInWords(probability)} only`;
}

import type { Anova } from "../../model/anova.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { LEVEL } from "../comparisonSentence.ts";
import { FACTOR_WORDS } from "../factors/factorWords.data.ts";
import { inWords } from "../inWords.ts";

/** The answer of an analysis of variance in plain sentences: which factors act, and whether one changes the other. */
export function anovaSentence({
  rows,
  factors,
  quantityTitle,
  spread,
  withInteraction,
}: Omit<Anova, "sentence" | "warnings">): string {
  const tested = rows.filter(({ kind }) => kind === "factor");
  const acts = tested.filter(({ pValue }) => pValue! < LEVEL);
  const not = tested.filter(({ pValue }) => pValue! >= LEVEL);
  const titles = (chosen: typeof tested) =>
    inWords(chosen.map(({ source, pValue }) => `${source} (${pWords(pValue!)})`));
  const found = [
    ...(acts.length === 0 ? [] : [`The ${quantityTitle} changes with ${titles(acts)}.`]),
    ...(not.length === 0 ? [] : [`No change with ${titles(not)} can be claimed.`]),
  ];
  const interaction = rows.find(({ kind }) => kind === "interaction");
  const remounting = `A run differs from another of the same kind by ${formatPercent(spread)}.`;
  return [...found, interactionWords(interaction, { factors, withInteraction }), remounting]
    .filter((one) => one !== "")
    .join(" ");
}

function interactionWords(
  row: Anova["rows"][number] | undefined,
  { factors, withInteraction }: Pick<Anova, "factors" | "withInteraction">,
): string {
  if (factors.length < 2) return "";
  const [first, second] = factors.map((factor) => FACTOR_WORDS[factor].title) as [string, string];
  if (!withInteraction || row === undefined) {
    return `Whether the effect of ${first} hangs on the ${second} can not be told from these runs.`;
  }
  return row.pValue! < LEVEL
    ? `The effect of ${first} hangs on the ${second} (interaction, ${pWords(row.pValue!)}): read the cell means, not one effect for all.`
    : `That the effect of ${first} hangs on the ${second} can not be claimed (interaction, ${pWords(row.pValue!)}).`;
}

const pWords = (p: number) => (p < 0.001 ? "p under 0.001" : `p ${formatNumber(p, 2)}`);

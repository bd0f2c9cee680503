import type { FactorRow, FactorTable } from "../../model/factor.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { inWords } from "../inWords.ts";
import { FACTOR_WORDS } from "./factorWords.data.ts";

/** What goes with the variant beside what is compared, named with its values. */
export function confoundingWarnings({
  rows,
  compared,
  confounded,
}: Pick<FactorTable, "rows" | "compared" | "confounded">): Warning[] {
  const rowOf = (factor: string) => rows.find((row) => row.factor === factor)!;
  return [...severalFactors(compared), ...confounded.map((factor) => confoundedFactor(rowOf(factor)))];
}

function severalFactors(compared: FactorTable["compared"]): Warning[] {
  if (compared.length < 2) return [];
  const titles = compared.map((factor) => FACTOR_WORDS[factor].title);
  return [
    warning({
      code: "compare.several-factors",
      where: inWords(titles),
      found: `The variants differ in ${inWords(titles)} at once, so a ratio is the effect of all of them together`,
      needed: "runs in which one changes and the others stay, or every combination of them",
      mend: "Read the ratios as those of whole propellers; with every combination run, the analysis of variance tells the effects apart",
    }),
  ];
}

function confoundedFactor({ factor, title, role, values }: FactorRow): Warning {
  const listed = values
    .map(
      ({ variant, values: own }) =>
        `${variant}: ${own.map(({ text, runs }) => (own.length > 1 ? `${text} (${runs})` : text)).join(", ")}`,
    )
    .join("; ");
  const { acts } = FACTOR_WORDS[factor];
  return warning({
    code: role === "separates" ? "compare.confounded" : "compare.partly-confounded",
    where: title,
    found:
      role === "separates"
        ? `The ${title} goes with the variant (${listed}), so what it changes can not be told from what the variant changes. It can move ${acts}`
        : `The ${title} is unevenly mixed over the variants (${listed}), so part of what it changes goes into the ratio. It can move ${acts}`,
    needed: `one ${title} for all runs, or each as often in every variant`,
    mend: "Run the variants in mixed order under the same conditions; the planner prints such a sheet",
  });
}

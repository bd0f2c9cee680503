import {
  DESIGN_FACTORS,
  FactorName,
  type FactorRole,
  type FactorRow,
  type FactorTable,
  type RunFacts,
} from "../../model/factor.ts";
import { inWords } from "../inWords.ts";
import { confoundingWarnings } from "./confounding.ts";
import { FACTOR_WORDS } from "./factorWords.data.ts";
import { type Level, levelsOf } from "./levels.ts";

/** The runs of one variant as a factor table sees them. */
export interface VariantFacts {
  readonly name: string;
  readonly runs: readonly RunFacts[];
}

const ORDER: readonly FactorRole[] = ["separates", "partly", "mixed", "constant", "unknown"];

/**
 * Which properties of propellers and runs differ between the variants, which are the same everywhere, and which go with
 * the variant so that their effect and its own can not be told apart.
 */
export function factorTable(variants: readonly VariantFacts[]): FactorTable {
  const rows = FactorName.options
    .map((factor) => factorRow(factor, variants))
    .filter((row) => row !== null)
    .sort((a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role));
  const named = (take: (row: FactorRow) => boolean) => rows.filter(take).map(({ factor }) => factor);
  const separating = named(({ isDesign, role }) => isDesign && role === "separates");
  // Another propeller is how a finish or a pitch comes about; on its own it is all that is known.
  const compared = separating.length > 1 ? separating.filter((factor) => factor !== "propeller") : separating;
  const table = {
    rows,
    compared,
    confounded: named(({ isDesign, role }) => !isDesign && (role === "separates" || role === "partly")),
    unknown: FactorName.options.filter(
      (factor) =>
        rows.find((row) => row.factor === factor)?.role === "unknown" || !rows.some((row) => row.factor === factor),
    ),
  };
  return { ...table, sentence: tableSentence(table), warnings: confoundingWarnings(table) };
}

/** Null where nothing is known of the factor. */
function factorRow(factor: FactorName, variants: readonly VariantFacts[]): FactorRow | null {
  const all = levelsOf(
    variants.flatMap(({ runs }) => runs),
    factor,
  );
  if (all.every((level) => level === null)) return null;
  const before = (i: number) => variants.slice(0, i).reduce((sum, { runs }) => sum + runs.length, 0);
  const levels = variants.map((_, i) => all.slice(before(i), before(i + 1)));
  const role = roleOf(levels);
  const isDesign = (DESIGN_FACTORS as readonly string[]).includes(factor);
  const { title } = FACTOR_WORDS[factor];
  return {
    ...{ factor, title, isDesign, role },
    values: variants.map(({ name }, i) => ({ variant: name, values: counted(levels[i]!) })),
    sentence: rowSentence({ factor, role, isDesign }),
  };
}

function counted(levels: readonly (Level | null)[]): { text: string; runs: number }[] {
  const counts = new Map<string, number>();
  for (const level of levels) {
    const text = level?.text ?? "not known";
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  return [...counts].map(([text, runs]) => ({ text, runs }));
}

function roleOf(variants: readonly (readonly (Level | null)[])[]): FactorRole {
  const all = variants.flat();
  if (all.some((level) => level === null)) return "unknown";
  const distinct = [...new Set(all)];
  if (distinct.length === 1) return "constant";
  if (variants.every((levels) => new Set(levels).size === 1)) return "separates";
  const share = (levels: readonly (Level | null)[], level: Level | null) =>
    levels.filter((one) => one === level).length / levels.length;
  const even = distinct.every((level) =>
    variants.every((levels) => Math.abs(share(levels, level) - share(variants[0]!, level)) < 1e-9),
  );
  return even ? "mixed" : "partly";
}

function rowSentence({ factor, role, isDesign }: Pick<FactorRow, "factor" | "role" | "isDesign">): string {
  const { title, acts } = FACTOR_WORDS[factor];
  const touches = acts === "" ? "" : ` It can move ${acts}.`;
  switch (role) {
    case "constant":
      return "";
    case "unknown":
      return `The ${title} is not stated for every run, so whether it goes with the variant is not known.${touches}`;
    case "mixed":
      return `The ${title} changes inside the variants alike, so it cancels but for chance.`;
    case "partly":
      return `The ${title} is unevenly mixed over the variants, so part of its effect goes into the ratio.${touches}`;
    case "separates":
      if (factor === "propeller") {
        return "Each variant is its own propeller: what a second print of the same shape would change is seen only where a variant holds several.";
      }
      return isDesign
        ? `The ${title} is what the variants differ in.`
        : `The ${title} goes with the variant, so its effect can not be told from that of the variant.${touches}`;
  }
}

function tableSentence({ rows, compared, unknown }: Pick<FactorTable, "rows" | "compared" | "unknown">): string {
  const titles = (factors: readonly FactorName[]) => inWords(factors.map((factor) => FACTOR_WORDS[factor].title));
  const same = rows.filter(({ role, factor }) => role === "constant" && factor !== "propeller");
  const differ =
    compared.length === 0
      ? "What the variants differ in is not stated, or differs inside them."
      : `The variants differ in ${titles(compared)}${compared.length === 1 ? " alone, as far as stated" : ""}.`;
  const constant = same.length === 0 ? "" : ` The same in all runs: ${titles(same.map(({ factor }) => factor))}.`;
  const open = unknown.filter((factor) => factor !== "propeller");
  const missing = open.length === 0 ? "" : ` Not stated for every run: ${titles(open)}.`;
  return `${differ}${constant}${missing}`;
}

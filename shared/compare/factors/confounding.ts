import {
  DESIGN_FACTORS,
  type FactorName,
  type FactorRow,
  type FactorTable,
  type RunFacts,
} from "../../model/factor.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { inWords } from "../inWords.ts";
import { FACTOR_WORDS } from "./factorWords.data.ts";
import { distinctLevels, levelsOf } from "./levels.ts";

/** The runs of one cell of a design: all that are taken as alike but for re-mounting. */
type AlikeRuns = readonly RunFacts[];

/**
 * Design factors beside those asked for that change among runs taken as alike: their effect goes into the spread, and into
 * the effects where they go with these.
 */
export function otherFactors(cells: readonly AlikeRuns[], asked: readonly FactorName[]): Warning[] {
  const runs = cells.flat();
  const others = DESIGN_FACTORS.filter((factor) => factor !== "propeller" && !asked.includes(factor));
  return others.flatMap((factor) => {
    const levels = levelsOf(runs, factor);
    const ofCell = (cell: AlikeRuns) => new Set(cell.map((run) => levels[runs.indexOf(run)]));
    const inside = cells.filter((cell) => ofCell(cell).size > 1);
    return inside.length === 0
      ? []
      : [
          variesInside(
            factor,
            asked,
            distinctLevels(levels).map(({ text }) => text),
          ),
        ];
  });
}

function variesInside(factor: FactorName, asked: readonly FactorName[], texts: readonly string[]): Warning {
  const { title } = FACTOR_WORDS[factor];
  const alike = asked.length === 0 ? "variant" : inWords(asked.map((one) => FACTOR_WORDS[one].title));
  return warning({
    code: "compare.varies-inside",
    where: title,
    found: `Runs of one ${alike} differ in ${title} as well (${texts.join(", ")}), so what it changes goes into the spread between mountings and may go into the effect`,
    needed: `one ${title}, or an analysis that holds it`,
    mend: `Take only runs of one ${title}${asked.length === 1 ? `, or ask for the analysis of variance over ${alike} and ${title}` : ""}`,
  });
}

/** What goes with the variant beside what is compared, named with its values. */
export function confoundingWarnings({
  rows,
  compared,
  confounded,
}: Pick<FactorTable, "rows" | "compared" | "confounded">): Warning[] {
  const rowOf = (factor: string) => rows.find((row) => row.factor === factor)!;
  return [
    ...severalFactors(inseparable(compared.map(rowOf))),
    ...confounded.map((factor) => confoundedFactor(rowOf(factor))),
  ];
}

/** Factors of which one tells the other from variant to variant, so that no comparison among these parts their effects. */
function inseparable(rows: readonly FactorRow[]): FactorName[] {
  const valuesOf = ({ values }: FactorRow) => values.map(({ values: own }) => own[0]!.text);
  const tells = (one: FactorRow, other: FactorRow) => {
    const pairs = valuesOf(one).map((value, i) => `${value}|${valuesOf(other)[i]}`);
    return new Set(pairs).size === new Set(valuesOf(one)).size;
  };
  const bound = rows.filter((row) => rows.some((other) => other !== row && (tells(row, other) || tells(other, row))));
  return bound.map(({ factor }) => factor);
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

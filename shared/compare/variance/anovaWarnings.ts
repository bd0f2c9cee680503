import type { Anova } from "../../model/anova.ts";
import type { RunFacts } from "../../model/factor.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { otherFactors } from "../factors/confounding.ts";
import { FACTOR_WORDS } from "../factors/factorWords.data.ts";
import { levelsOf } from "../factors/levels.ts";
import { inWords } from "../inWords.ts";
import type { GroupedRun } from "../studiedRuns.ts";

interface Analysed {
  readonly all: readonly GroupedRun[];
  /** Those of which the factors are known. */
  readonly runs: readonly GroupedRun[];
  readonly anova: Pick<Anova, "factors" | "design" | "withInteraction" | "cells">;
}

/** What a reader must know next to an analysis of variance. */
export function anovaWarnings({ all, runs, anova }: Analysed): Warning[] {
  const cells = cellsOf(runs, anova);
  return [
    ...leftOut(all, runs, anova),
    ...withoutInteraction(anova),
    ...otherFactors(cells, anova.factors),
    ...onePropellerEach(cells, anova),
  ];
}

/** The runs of each combination that was run. */
function cellsOf(runs: readonly GroupedRun[], { factors }: Pick<Anova, "factors">): RunFacts[][] {
  const facts = runs.map((run) => run.facts);
  const levels = factors.map((factor) => levelsOf(facts, factor));
  const cells = new Map<string, RunFacts[]>();
  facts.forEach((run, i) => {
    const name = levels.map((axis) => axis[i]!.text).join(" | ");
    cells.set(name, [...(cells.get(name) ?? []), run]);
  });
  return [...cells.values()];
}

const titlesOf = ({ factors }: Pick<Anova, "factors">) => inWords(factors.map((factor) => FACTOR_WORDS[factor].title));

function leftOut(all: readonly GroupedRun[], runs: readonly GroupedRun[], anova: Pick<Anova, "factors">): Warning[] {
  const without = all.filter((run) => !runs.includes(run)).map(({ facts }) => facts.name);
  if (without.length === 0) return [];
  return [
    warning({
      code: "compare.run-left-out",
      where: inWords(without),
      found: `The ${titlesOf(anova)} of ${without.length === 1 ? "this run" : "these runs"} is not stated, so the analysis of variance leaves ${without.length === 1 ? "it" : "them"} out`,
      needed: "",
      mend: `State the ${titlesOf(anova)}`,
    }),
  ];
}

function withoutInteraction({ factors, withInteraction, design, cells }: Analysed["anova"]): Warning[] {
  if (factors.length < 2 || withInteraction) return [];
  const repeated = cells.some(({ runs }) => runs > 1);
  return [
    warning({
      code: "compare.no-interaction",
      where: titlesOf({ factors }),
      found: repeated
        ? "The combinations that were run leave the interaction no degree of freedom"
        : "No combination was run twice, so what one factor changes in the other can not be told from the spread between mountings",
      needed:
        design === "emptyCells" ? "every combination, and some of them twice" : "two mountings of some combinations",
      mend: "The factors are tested as if their effects multiplied; an interaction hides in the residual and makes the tests blunter",
    }),
  ];
}

/** Mountings of one propeller a cell say how well these propellers were measured, not what another print would be. */
function onePropellerEach(cells: readonly RunFacts[][], { factors }: Pick<Anova, "factors">): Warning[] {
  const propellersOf = (cell: RunFacts[]) => new Set(cell.map(({ propeller }) => propeller?.toLowerCase()));
  const known = cells.every((cell) => !propellersOf(cell).has(undefined));
  const repeated = cells.some((cell) => cell.length > 1);
  const single = cells.every((cell) => propellersOf(cell).size === 1);
  if (!known || !repeated || !single || factors.includes("propeller")) return [];
  return [
    warning({
      code: "compare.one-propeller-each",
      where: titlesOf({ factors }),
      found: "Each combination is one propeller, mounted again",
      needed: "a second print of some of them, to speak of shapes rather than of these propellers",
      mend: "Read the table as one of these propellers: the spread from print to print is not in it",
    }),
  ];
}

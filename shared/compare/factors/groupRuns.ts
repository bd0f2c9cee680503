import type { ComparisonRequest, RunFilter } from "../../model/comparisonRequest.ts";
import type { RunFacts } from "../../model/factor.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { inWords } from "../inWords.ts";
import { FACTOR_WORDS } from "./factorWords.data.ts";
import { distinctLevels, levelsOf } from "./levels.ts";

export interface RunGroup {
  readonly name: string;
  readonly runs: readonly RunFacts[];
}

/** The runs that carry all tags and have all values of the filter. */
export function filteredRuns(runs: readonly RunFacts[], { tags, factors }: RunFilter): RunFacts[] {
  const wanted = factors.map(({ factor, text }) => ({
    levels: levelsOf(runs, factor),
    text: text.trim().toLowerCase(),
  }));
  return runs.filter(
    (run, i) =>
      tags.every((tag) => run.tags.includes(tag)) &&
      wanted.every(({ levels, text }) => levels[i]?.text.toLowerCase() === text),
  );
}

/**
 * A group for each variant, for each set of tags, or for each level of a factor; runs that do not state it are left out and
 * told.
 */
export function groupRuns(
  runs: readonly RunFacts[],
  by: NonNullable<ComparisonRequest["groupBy"]>,
): { readonly groups: readonly RunGroup[]; readonly warnings: readonly Warning[] } {
  if (by === "variant") return groupsByName(runs, ({ variant }) => variant, "variant");
  if (by === "tags") return groupsByName(runs, ({ tags }) => [...tags].sort().join(", "), "tag");
  const levels = levelsOf(runs, by);
  const groups = distinctLevels(levels).map((level) => ({
    name: level.number === null ? level.text : `${FACTOR_WORDS[by].title} ${level.text}`,
    runs: runs.filter((_, i) => levels[i] === level),
  }));
  const without = runs.filter((_, i) => levels[i] === null);
  return { groups, warnings: leftOut(without, FACTOR_WORDS[by].title) };
}

/** A group for each name, in the order of the runs; an empty one is none. */
function groupsByName(runs: readonly RunFacts[], nameOf: (run: RunFacts) => string, title: string) {
  const names = [...new Set(runs.map(nameOf))].filter((name) => name !== "");
  const groups = names.map((name) => ({ name, runs: runs.filter((run) => nameOf(run) === name) }));
  const without = runs.filter((run) => nameOf(run) === "");
  return { groups, warnings: leftOut(without, title) };
}

function leftOut(runs: readonly RunFacts[], title: string): Warning[] {
  if (runs.length === 0) return [];
  const names = inWords(runs.map(({ name }) => name));
  return [
    warning({
      code: "compare.run-left-out",
      where: names,
      found: `The ${title} of ${runs.length === 1 ? "this run is not stated, so it is" : "these runs is not stated, so they are"} in no group`,
      needed: "",
      mend: `State the ${title} to have it compared`,
    }),
  ];
}

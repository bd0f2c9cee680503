import { FACTOR_WORDS } from "../../../shared/compare/factors/factorWords.data.ts";
import { groupRuns } from "../../../shared/compare/factors/groupRuns.ts";
import { distinctLevels, levelsOf } from "../../../shared/compare/factors/levels.ts";
import { FactorName, type RunFacts } from "../../../shared/model/factor.ts";
import { capitalised } from "../../app/words.ts";

/** What the groups are made by: the variant written on each run, its tags, or a factor. */
export type GroupBy = "variant" | "tags" | FactorName;

/** The group of each run by its id; runs that do not state it are absent. */
export function groupNames(runs: readonly RunFacts[], by: GroupBy): ReadonlyMap<string, string> {
  const { groups } = groupRuns(runs, by);
  return new Map(groups.flatMap(({ name, runs: own }) => own.map(({ id }) => [id, name] as const)));
}

export interface FilterChoice {
  /** "factor=text", "tag=text", or empty for all runs. */
  readonly value: string;
  readonly label: string;
}

/** Ways of making groups: tags where there are some, and factors that have at least two values among the runs. */
export function groupChoices(
  runs: readonly RunFacts[],
): readonly { readonly value: GroupBy; readonly label: string }[] {
  const tagged = runs.some(({ tags }) => tags.length > 0);
  const differing = FactorName.options.filter((factor) => distinctLevels(levelsOf(runs, factor)).length > 1);
  return [
    { value: "variant", label: "variant on each run" },
    ...(tagged ? [{ value: "tags" as const, label: "tags" }] : []),
    ...differing.map((factor) => ({ value: factor, label: FACTOR_WORDS[factor].title })),
  ];
}

/** What the runs can be cut down to: each tag, and each value of a factor that differs. */
export function filterChoices(runs: readonly RunFacts[]): FilterChoice[] {
  const tags = [...new Set(runs.flatMap((run) => run.tags))].sort();
  const levels = FactorName.options.flatMap((factor) => {
    const distinct = distinctLevels(levelsOf(runs, factor));
    if (distinct.length < 2) return [];
    return distinct.map(({ text }) => ({
      value: `${factor}=${text}`,
      label: `${capitalised(FACTOR_WORDS[factor].title)}: ${text}`,
    }));
  });
  return [
    { value: "", label: "all runs" },
    ...tags.map((tag) => ({ value: `tag=${tag}`, label: `Tag: ${tag}` })),
    ...levels,
  ];
}

/** The runs a choice leaves. */
export function chosenRuns(runs: readonly RunFacts[], choice: string): readonly RunFacts[] {
  const [key = "", ...rest] = choice.split("=");
  const text = rest.join("=");
  if (key === "") return runs;
  if (key === "tag") return runs.filter(({ tags }) => tags.includes(text));
  const levels = levelsOf(runs, FactorName.parse(key));
  return runs.filter((_, at) => levels[at]?.text === text);
}

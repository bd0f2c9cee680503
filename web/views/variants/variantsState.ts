import { computed, signal } from "@preact/signals";
import { compareAll } from "../../../shared/compare/compareVariants.ts";
import type { Comparison, SpreadChoice } from "../../../shared/model/comparison.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { reductions } from "../../app/reductions.ts";
import { runs } from "../../app/session.ts";
import { chosenRuns, type GroupBy, groupNames } from "./grouping.ts";
import { factsOf } from "./runFacts.ts";
import { reductionsOf, shownGroups, variantGroups } from "./variantGroups.ts";
import { baselineOf } from "./variantsModel.ts";

/** The factor that somebody claims for thrust at equal rotation rate, "more than doubles" to begin with. */
export const claimed = signal(2);

/** Names that a person chose to see, on this screen and on the others that show variants; null: not chosen yet. */
const chosenNames = signal<ReadonlySet<string> | null>(null);
const chosenBaseline = signal<string | null>(null);

/** What the groups are made by, and which runs are taken. */
export const groupBy = signal<GroupBy>("variant");
export const onlyRuns = signal("");

/** Runs with a propeller and what is known of each. */
export const measuredFacts = computed(() =>
  runs.value
    .filter(({ document }) => document.purpose === "propeller")
    .map(({ id, document }) => factsOf(id, document)),
);
const names = computed(() => groupNames(chosenRuns(measuredFacts.value, onlyRuns.value), groupBy.value));

/** All runs by variant, with what is known of each. */
export const allGroups = computed(() =>
  variantGroups(
    runs.value,
    (id) => reductions.value.get(id)?.reduction ?? null,
    ({ id }) => names.value.get(id) ?? "",
  ),
);
/** The variants on show. */
export const groups = computed(() => shownGroups(allGroups.value, chosenNames.value));
export const baseline = computed(() => baselineOf(groups.value, chosenBaseline.value));

/** Every variant against the baseline, or every pair; p-values are corrected over the pairs on show. */
export const pairs = signal<"baseline" | "all">("baseline");

/** Which spread from mounting to mounting serves which variant. */
export const spreads = signal<SpreadChoice>("tested");

export function chooseBaseline(name: string): void {
  chosenBaseline.value = name;
}

/** Shows or hides one variant; the last one stays. */
export function showVariant(name: string, shown: boolean): void {
  const names = new Set(groups.value.map((group) => group.name));
  if (shown) names.add(name);
  else names.delete(name);
  if (names.size > 0) chosenNames.value = names;
}

interface Compared {
  readonly comparisons: readonly Comparison[];
  readonly problem: string;
}

/** Every other variant against the baseline; computed here by the function that the server and the command line use. */
export const compared = computed((): Compared => {
  const base = baseline.value;
  const known = groups.value
    .map((group) => ({ name: group.name, reductions: reductionsOf(group) }))
    .filter((group) => group.reductions.length > 0);
  if (base === null || known.length < 2) return { comparisons: [], problem: "" };
  try {
    const question = { baseline: base.name, pairs: pairs.value, spreads: spreads.value };
    return { comparisons: compareAll({ groups: known, ...question }), problem: "" };
  } catch (thrown) {
    return { comparisons: [], problem: sentenceOf(thrown) };
  }
});

/** The comparisons with the baseline alone, whatever pairs are on show. */
export const againstBaseline = computed(() =>
  compared.value.comparisons.filter((one) => one.baseline.name === baseline.value?.name),
);

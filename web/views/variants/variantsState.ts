import { computed, signal } from "@preact/signals";
import { judgedThrustClaim } from "../../../shared/compare/claimVerdict.ts";
import { compareAll } from "../../../shared/compare/compareVariants.ts";
import type { Comparison, SpreadChoice } from "../../../shared/model/comparison.ts";
import type { ThrustClaim } from "../../../shared/model/thrustClaim.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { editProject } from "../../app/edits.ts";
import { reductions } from "../../app/reductions.ts";
import { project, runs } from "../../app/session.ts";
import { chosenRuns, type GroupBy, groupNames } from "./grouping.ts";
import { factsOf } from "./runFacts.ts";
import { reductionsOf, shownGroups, variantGroups } from "./variantGroups.ts";
import { baselineOf } from "./variantsModel.ts";

/** Names that a person chose to see, on this screen and on the others that show variants; null: not chosen yet. */
const chosenNames = signal<ReadonlySet<string> | null>(null);

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

/** Of groups that are not those of the project's variants: chosen until the page is left. */
const passingBaseline = signal<string | null>(null);
const chosenBaseline = computed(() =>
  groupBy.value === "variant" ? (project.value?.document.baselineVariant ?? null) : passingBaseline.value,
);
const heldAgainst = computed(() => baselineOf(groups.value, runs.value, chosenBaseline.value));
export const baseline = computed(() => heldAgainst.value?.group ?? null);
/** Why it is this one; empty without one. */
export const baselineBecause = computed(() => heldAgainst.value?.because ?? "");

/** Every variant against the baseline, or every pair; p-values are corrected over the pairs on show. */
export const pairs = signal<"baseline" | "all">("baseline");

/** Which spread from mounting to mounting serves which variant. */
export const spreads = signal<SpreadChoice>("tested");

/** The choice among the variants is kept with the project. */
export function chooseBaseline(name: string): unknown {
  if (groupBy.value === "variant") {
    return editProject(`Measured against “${name}”`, (document) => ({ ...document, baselineVariant: name }));
  }
  passingBaseline.value = name;
  return undefined;
}

/** The gain that somebody claims, as the project states it. */
export const claim = computed((): ThrustClaim | null => project.value?.document.thrustClaim ?? null);

/** Whether the claim as it is being typed can be read; while it can not, the verdict on the one before is not shown. */
export const claimIsReadable = signal(true);

/** States the claim, changes it, or takes it away where the factor is null. */
export function changeClaim(change: { readonly factor?: number | null; readonly source?: string }): Promise<boolean> {
  const { factor } = change;
  const label =
    factor === null ? "Took the claim away" : factor === undefined ? "Stated who claims it" : "Stated a claim";
  return editProject(label, ({ thrustClaim, ...document }) => {
    const wanted = { source: "", ...thrustClaim, ...change };
    return typeof wanted.factor === "number"
      ? { ...document, thrustClaim: { factor: wanted.factor, source: wanted.source } }
      : document;
  });
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

/** What the comparisons say of the claim; null without one. */
const judged = (comparisons: readonly Comparison[]) =>
  claim.value === null ? null : judgedThrustClaim(comparisons, claim.value);
export const judgedClaim = computed(() => judged(compared.value.comparisons));
export const claimAgainstBaseline = computed(() => judged(againstBaseline.value));

/** The comparisons with the baseline alone, whatever pairs are on show. */
export const againstBaseline = computed(() =>
  compared.value.comparisons.filter((one) => one.baseline.name === baseline.value?.name),
);

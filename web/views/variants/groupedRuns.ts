import { computed } from "@preact/signals";
import { otherFactors } from "../../../shared/compare/factors/confounding.ts";
import { factorTable } from "../../../shared/compare/factors/factorTable.ts";
import type { GroupedRun } from "../../../shared/compare/studiedRuns.ts";
import { factsOf } from "./runFacts.ts";
import { distinctWarnings } from "./variantsModel.ts";
import { compared, groups } from "./variantsState.ts";

/** The runs of the variants on show that have been reduced, with what is known of each beside its log. */
export const groupedRuns = computed((): GroupedRun[] =>
  groups.value.flatMap(({ name, members }) =>
    members.flatMap(({ id, run, reduction }) =>
      reduction === null ? [] : [{ variant: name, reduction, facts: factsOf(id, run) }],
    ),
  ),
);

/** The variants that have a reduced run, with what is known of their runs. */
const known = computed(() => {
  const names = [...new Set(groupedRuns.value.map(({ variant }) => variant))];
  const runsOf = (name: string) => groupedRuns.value.filter(({ variant }) => variant === name);
  return names.map((name) => ({ name, runs: runsOf(name).map(({ facts }) => facts) }));
});

/** Which factors differ between the variants on show. */
export const factors = computed(() => factorTable(known.value));

/** What to know beside the comparisons on show: of the runs, of what goes with a variant, and of what differs inside one. */
export const doubts = computed(() => {
  const { compared: asked, warnings } = factors.value;
  const inside = otherFactors(
    known.value.map(({ runs }) => runs),
    asked,
  );
  return distinctWarnings([...compared.value.comparisons, { warnings: [...warnings, ...inside] }]);
});

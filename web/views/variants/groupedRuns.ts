import { computed } from "@preact/signals";
import { factorTable } from "../../../shared/compare/factors/factorTable.ts";
import type { GroupedRun } from "../../../shared/compare/studiedRuns.ts";
import { factsOf } from "./runFacts.ts";
import { groups } from "./variantsState.ts";

/** The runs of the variants on show that have been reduced, with what is known of each beside its log. */
export const groupedRuns = computed((): GroupedRun[] =>
  groups.value.flatMap(({ name, members }) =>
    members.flatMap(({ id, run, reduction }) =>
      reduction === null ? [] : [{ variant: name, reduction, facts: factsOf(id, run) }],
    ),
  ),
);

/** Which factors differ between the variants on show. */
export const factors = computed(() => {
  const names = [...new Set(groupedRuns.value.map(({ variant }) => variant))];
  return factorTable(
    names.map((name) => ({
      name,
      runs: groupedRuns.value.filter(({ variant }) => variant === name).map(({ facts }) => facts),
    })),
  );
});

import { computed } from "@preact/signals";
import { factorTable } from "../../../shared/compare/factors/factorTable.ts";
import { factsOfRun } from "../../../shared/compare/factors/factsOfRun.ts";
import type { GroupedRun } from "../../../shared/compare/studiedRuns.ts";
import type { Run } from "../../../shared/model/run.ts";
import { partOf } from "../../app/session.ts";
import { groups } from "./variantsState.ts";

/** The runs of the variants on show that have been reduced, with what is known of each beside its log. */
export const groupedRuns = computed((): GroupedRun[] =>
  groups.value.flatMap(({ name, members }) =>
    members.flatMap(({ id, run, reduction }) =>
      reduction === null ? [] : [{ variant: name, reduction, facts: factsOfRun(id, run, partsOf(run)) }],
    ),
  ),
);

function partsOf({ propellerId, recipe }: Run) {
  const instruments = Object.fromEntries(
    Object.entries(recipe.instrumentIds ?? {}).map(([role, id]) => [role, partOf("instruments", id)?.document.name]),
  );
  return {
    propeller: partOf("propellers", propellerId)?.document,
    motor: partOf("motors", recipe.motorId)?.document.name,
    controller: partOf("controllers", recipe.controllerId)?.document.name,
    instruments,
  };
}

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

import { factsOfRun } from "../../../shared/compare/factors/factsOfRun.ts";
import type { RunFacts } from "../../../shared/model/factor.ts";
import type { Run } from "../../../shared/model/run.ts";
import { partOf } from "../../app/session.ts";

/** What is known of a run beside its log, with the parts of the open project. */
export function factsOf(id: string, run: Run): RunFacts {
  return factsOfRun(id, run, partsOf(run));
}

function partsOf({ propellerId, packId, recipe }: Run) {
  const instruments = Object.fromEntries(
    Object.entries(recipe.instrumentIds ?? {}).map(([role, id]) => [role, partOf("instruments", id)?.document.name]),
  );
  return {
    propeller: partOf("propellers", propellerId)?.document,
    motor: partOf("motors", recipe.motorId)?.document.name,
    controller: partOf("controllers", recipe.controllerId)?.document.name,
    pack: partOf("packs", packId)?.document.name,
    instruments,
  };
}

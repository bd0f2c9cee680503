import { factsOfRun } from "../../shared/compare/factors/factsOfRun.ts";
import { filteredRuns, groupRuns } from "../../shared/compare/factors/groupRuns.ts";
import type { ComparisonRequest, RunFilter } from "../../shared/model/comparisonRequest.ts";
import type { RunFacts } from "../../shared/model/factor.ts";
import { InstrumentRole } from "../../shared/model/instrument.ts";
import type { PartKind } from "../../shared/model/parts/partKinds.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Warning } from "../../shared/quantity/warning.ts";
import type { Store } from "../store/store.ts";

/** What is known of a stored run; a part that was deleted counts as not stated. */
export function factsOfStored(store: Store, projectId: string, { id, document: run }: StoredDocument<Run>): RunFacts {
  const part = <K extends PartKind>(kind: K, partId: string | undefined) => {
    const shelf = store.parts(projectId, kind);
    return partId !== undefined && shelf.has(partId) ? shelf.find(partId).document : undefined;
  };
  const { motorId, controllerId, instrumentIds = {} } = run.recipe;
  const instruments = InstrumentRole.options.flatMap((role) => {
    const instrument = part("instruments", instrumentIds[role]);
    return instrument ? [[role, instrument.name] as const] : [];
  });
  return factsOfRun(id, run, {
    propeller: part("propellers", run.propellerId),
    motor: part("motors", motorId)?.name,
    controller: part("controllers", controllerId)?.name,
    pack: part("packs", run.packId)?.name,
    instruments: Object.fromEntries(instruments),
  });
}

/** The groups of a request by the ids of their runs, and what was left out. */
export interface RequestedGroups {
  readonly groups: readonly { readonly name: string; readonly runs: readonly string[] }[];
  readonly warnings: readonly Warning[];
}

const EVERY_RUN: RunFilter = { tags: [], factors: [] };

/** The groups that are listed, or those that `groupBy` makes of the runs with a propeller. */
export function requestedGroups(
  store: Store,
  projectId: string,
  { groups, groupBy = "variant", filter = EVERY_RUN }: ComparisonRequest,
): RequestedGroups {
  if (groups !== undefined) return { groups, warnings: [] };
  const facts = store
    .runs(projectId)
    .list()
    .filter(({ document }) => document.purpose === "propeller" && document.propellerId !== undefined)
    .map((run) => factsOfStored(store, projectId, run));
  const made = groupRuns(filteredRuns(facts, filter), groupBy);
  if (made.groups.length < 2) throw tooFew(made.groups.length);
  return {
    groups: made.groups.map(({ name, runs }) => ({ name, runs: runs.map(({ id }) => id) })),
    warnings: made.warnings,
  };
}

function tooFew(count: number): InputProblem {
  return new InputProblem({
    code: "compare.one-group",
    where: "groupBy",
    found: count === 0 ? "No run is left for a group" : "All runs that are left fall into one group",
    needed: "two groups or more",
    mend: "Group by something the runs differ in, or take more runs",
  });
}

import { signal } from "@preact/signals";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { ApiProblem, sentenceOf } from "../api/apiProblem.ts";
import { readReduction } from "../api/client.ts";
import { openProjectId, partOf, runs } from "./session.ts";

/** What is known of the reduction of one run. While a newer one is computed, the last good one stays in `reduction`. */
export interface ReductionState {
  readonly state: "working" | "ready" | "refused";
  readonly reduction: Reduction | null;
  /** Why it can not be reduced, a whole sentence. */
  readonly problem: ApiProblem | null;
  /** Versions of run, propeller, motor and controller that it rests on. */
  readonly basis: string;
}

/** By run id. Filled by `needReductions`. */
export const reductions = signal<ReadonlyMap<string, ReductionState>>(new Map());

/**
 * Sees to it that the reductions of these runs are there and rest on what is stored now. Call it inside an effect
 * (`useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)))`): it reads the runs and parts, so the effect
 * runs again when one changes.
 */
export function needReductions(ids: readonly string[]): void {
  const stored = new Map(runs.value.map((run) => [run.id, run]));
  for (const id of ids) {
    const run = stored.get(id);
    if (!run) continue;
    const basis = basisOf(run);
    if (reductions.peek().get(id)?.basis !== basis) void load(id, basis);
  }
}

function basisOf({ version, document }: StoredDocument<Run>): string {
  const { propellerId, recipe } = document;
  const versions = [
    partOf("propellers", propellerId)?.version,
    partOf("motors", recipe.motorId)?.version,
    partOf("controllers", recipe.controllerId)?.version,
  ];
  return [version, ...versions.map((v) => v ?? 0)].join(".");
}

async function load(id: string, basis: string): Promise<void> {
  const last = reductions.peek().get(id)?.reduction ?? null;
  keep(id, { state: "working", reduction: last, problem: null, basis });
  try {
    const reduction = await readReduction(openProjectId(), id);
    keepIfWanted(id, { state: "ready", reduction, problem: null, basis });
  } catch (thrown) {
    const problem =
      thrown instanceof ApiProblem
        ? thrown
        : new ApiProblem({ status: 0, code: "page.no-answer", detail: sentenceOf(thrown) });
    keepIfWanted(id, { state: "refused", reduction: null, problem, basis });
  }
}

/** An answer that an edit has overtaken is dropped. */
function keepIfWanted(id: string, state: ReductionState): void {
  if (reductions.peek().get(id)?.basis === state.basis) keep(id, state);
}

function keep(id: string, state: ReductionState): void {
  reductions.value = new Map(reductions.peek()).set(id, state);
}

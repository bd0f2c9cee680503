import { computed, effect, signal } from "@preact/signals";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { ApiProblem, sentenceOf } from "../api/apiProblem.ts";
import { readReduction, watchReduction } from "../api/client.ts";
import { openProjectId, partOf, runs } from "./session.ts";

/** What is known of the reduction of one run. While a newer one is computed, the last good one stays in `reduction`. */
export interface ReductionState {
  readonly state: "working" | "ready" | "refused";
  readonly reduction: Reduction | null;
  /** Why it can not be reduced, a whole sentence. */
  readonly problem: ApiProblem | null;
  /** Part of the work that is done, 0 to 1; only of long logs, whose work can be given up. */
  readonly fraction?: number;
  /** Versions of run, propeller, motor, controller and instruments that it rests on. */
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
    // A run without propeller has no coefficients: its voltage, current and speed are read where a motor is identified.
    if (!run) continue;
    if (run.document.purpose !== "propeller") {
      forget(id);
      continue;
    }
    const basis = basisOf(run);
    if (reductions.peek().get(id)?.basis !== basis) load(run, basis);
  }
}

function basisOf({ version, document }: StoredDocument<Run>): string {
  const { propellerId, recipe } = document;
  const versions = [
    partOf("propellers", propellerId)?.version,
    partOf("motors", recipe.motorId)?.version,
    partOf("controllers", recipe.controllerId)?.version,
    ...Object.values(recipe.instrumentIds ?? {}).map((id) => partOf("instruments", id)?.version),
  ];
  return [version, ...versions.map((v) => v ?? 0)].join(".");
}

function load(run: StoredDocument<Run>, basis: string): void {
  const { id } = run;
  const last = reductions.peek().get(id)?.reduction ?? null;
  const isLong = run.document.file.size >= LONG;
  keep(id, { state: "working", reduction: last, problem: null, basis, ...(isLong && { fraction: 0 }) });
  const told = {
    reduction: (reduction: Reduction) => keepIfWanted(id, { state: "ready", reduction, problem: null, basis }),
    problem: (problem: ApiProblem) => keepIfWanted(id, { state: "refused", reduction: null, problem, basis }),
  };
  stops.get(id)?.();
  stops.delete(id);
  if (!isLong) {
    readReduction(openProjectId(), id).then(told.reduction, (thrown: unknown) => told.problem(problemOf(thrown)));
  } else {
    const progress = (fraction: number) =>
      keepIfWanted(id, { state: "working", reduction: last, problem: null, fraction, basis });
    stops.set(id, watchReduction(openProjectId(), id, { ...told, progress }));
  }
}

/** Gives the work on a long log up. Nothing stored is touched; an edit, its undo, or `restartReduction` begins it anew. */
export function stopReduction(id: string): void {
  const state = reductions.peek().get(id);
  const stop = stops.get(id);
  if (state?.state !== "working" || stop === undefined) return;
  stop();
  stops.delete(id);
  const problem = new ApiProblem({ status: 0, code: "page.stopped", detail: "The reduction was stopped." });
  keep(id, { state: "refused", reduction: null, problem, basis: state.basis });
}

/** Begins again what `stopReduction` gave up. */
export function restartReduction(id: string): void {
  const run = runs.peek().find((one) => one.id === id);
  if (run !== undefined && reductions.peek().get(id)?.problem?.code === "page.stopped") load(run, basisOf(run));
}

/** Bytes from which a log is worth showing progress for: below, the answer comes sooner than a bar could be read. */
const LONG = 4_000_000;

/** Stops the work on a long log, by run id, when an edit overtakes it. */
const stops = new Map<string, () => void>();

const isToCome = (state: ReductionState | undefined) => state === undefined || state.state === "working";

/** Whether the reduction of a run is still to come, so that what rests on it may change; never of a run without propeller. */
export function awaits({ id, document }: StoredDocument<Run>): boolean {
  return document.purpose === "propeller" && isToCome(reductions.value.get(id));
}

/** Whether the reduction of any run of the project is still to come. */
export const isReducing = computed(() => runs.value.some(awaits));

/** Resolves as soon as no reduction of this run is on its way. */
export function reduced(id: string): Promise<void> {
  return new Promise((done) => {
    const stop = effect(() => {
      if (reductions.value.get(id)?.state === "working") return;
      done();
      queueMicrotask(() => stop());
    });
  });
}

function problemOf(thrown: unknown): ApiProblem {
  return thrown instanceof ApiProblem
    ? thrown
    : new ApiProblem({ status: 0, code: "page.no-answer", detail: sentenceOf(thrown) });
}

/** An answer that an edit has overtaken is dropped. */
function keepIfWanted(id: string, state: ReductionState): void {
  if (reductions.peek().get(id)?.basis === state.basis) keep(id, state);
}

function forget(id: string): void {
  if (!reductions.peek().has(id)) return;
  const left = new Map(reductions.peek());
  left.delete(id);
  reductions.value = left;
}

function keep(id: string, state: ReductionState): void {
  reductions.value = new Map(reductions.peek()).set(id, state);
}

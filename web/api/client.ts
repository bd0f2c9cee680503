import type { z } from "zod";
import type { AlignmentPicture, Companion } from "../../shared/model/alignment.ts";
import type { MonteCarlo } from "../../shared/model/budget.ts";
import type { ElectricalRun } from "../../shared/model/electrical.ts";
import type { LogInspection } from "../../shared/model/log.ts";
import type { PART_SCHEMAS, PartKind, PartOf } from "../../shared/model/parts/partKinds.ts";
import type { PartsTableRequest } from "../../shared/model/partsTable.ts";
import type { Project } from "../../shared/model/project.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import type { Trace } from "../../shared/model/trace.ts";
import { type ApiProblem, problemFrom } from "./apiProblem.ts";
import { ask } from "./request.ts";

/** A document to store; fields with a default may be left away. */
export type PartInput<K extends PartKind> = z.input<(typeof PART_SCHEMAS)[K]>;

export type StoredParts = { readonly [K in PartKind]: readonly StoredDocument<PartOf[K]>[] };

/** A run just made from a file or a table, with the first look at its log. */
export interface NewRun {
  readonly run: StoredDocument<Run>;
  readonly inspection: LogInspection;
}

const at = (...parts: readonly string[]) => `/api/${parts.map(encodeURIComponent).join("/")}`;
const byVersion = (path: string, version: number) => `${path}?version=${version}`;

// Projects

export const listProjects = async (signal?: AbortSignal) =>
  (await ask<{ projects: StoredDocument<Project>[] }>(at("projects"), { signal })).projects;
export const createProject = (document: Project) =>
  ask<StoredDocument<Project>>(at("projects"), { method: "POST", body: document });
export const readProject = (id: string) => ask<StoredDocument<Project>>(at("projects", id));
export const saveProject = (id: string, version: number, document: Project) =>
  ask<StoredDocument<Project>>(at("projects", id), { method: "PUT", body: { version, document } });
export const deleteProject = (id: string, version: number) =>
  ask<unknown>(byVersion(at("projects", id), version), { method: "DELETE" });
export const restoreProject = (id: string) =>
  ask<StoredDocument<Project>>(at("projects", id, "restore"), { method: "POST" });

// Parts

export const listParts = (projectId: string, signal?: AbortSignal) =>
  ask<StoredParts>(at("projects", projectId, "parts"), { signal });
export const addPart = <K extends PartKind>(projectId: string, kind: K, document: PartInput<K>) =>
  ask<StoredDocument<PartOf[K]>>(at("projects", projectId, "parts", kind), { method: "POST", body: document });
export const savePart = <K extends PartKind>(
  projectId: string,
  kind: K,
  id: string,
  version: number,
  document: PartInput<K>,
) =>
  ask<StoredDocument<PartOf[K]>>(at("projects", projectId, "parts", kind, id), {
    method: "PUT",
    body: { version, document },
  });
export const deletePart = (projectId: string, kind: PartKind, id: string, version: number) =>
  ask<unknown>(byVersion(at("projects", projectId, "parts", kind, id), version), { method: "DELETE" });
export const restorePart = <K extends PartKind>(projectId: string, kind: K, id: string) =>
  ask<StoredDocument<PartOf[K]>>(at("projects", projectId, "parts", kind, id, "restore"), { method: "POST" });

/** What an import did, with all that is needed to take it back. */
export interface ImportedParts<K extends PartKind> {
  readonly added: readonly StoredDocument<PartOf[K]>[];
  readonly changed: readonly {
    readonly before: StoredDocument<PartOf[K]>;
    readonly after: StoredDocument<PartOf[K]>;
  }[];
  /** Lines of the table that were left out. */
  readonly leftOut: readonly number[];
}
/** Imports a table of parts, all of it or nothing. */
export const importParts = <K extends PartKind>(projectId: string, kind: K, request: PartsTableRequest) =>
  ask<ImportedParts<K>>(at("projects", projectId, "parts", kind, "table"), { method: "POST", body: request });
/** Address of the parts of a kind as comma-separated text. */
export const partsTableAddress = (projectId: string, kind: PartKind) =>
  at("projects", projectId, "parts", kind, "table");

// Runs

export const listRuns = async (projectId: string, signal?: AbortSignal) =>
  (await ask<{ runs: StoredDocument<Run>[] }>(at("projects", projectId, "runs"), { signal })).runs;
export function addRunFile(projectId: string, file: File, signal?: AbortSignal) {
  const form = new FormData();
  form.append("file", file, file.name);
  return ask<NewRun>(at("projects", projectId, "runs"), { method: "POST", form, signal });
}
/** Sends the electrical log of a run; the run is changed by storing it with the companion that comes back. */
export function sendCompanion(projectId: string, id: string, file: File) {
  const form = new FormData();
  form.append("file", file, file.name);
  return ask<{ companion: Companion; inspection: LogInspection }>(at("projects", projectId, "runs", id, "companion"), {
    method: "POST",
    form,
  });
}
/** A run from readings typed or pasted as a table. */
export const addRunTable = (projectId: string, table: { readonly name: string; readonly text: string }) =>
  ask<NewRun>(at("projects", projectId, "runs", "table"), { method: "POST", body: table });
export const saveRun = (projectId: string, id: string, version: number, document: Run) =>
  ask<StoredDocument<Run>>(at("projects", projectId, "runs", id), { method: "PUT", body: { version, document } });
export const deleteRun = (projectId: string, id: string, version: number) =>
  ask<unknown>(byVersion(at("projects", projectId, "runs", id), version), { method: "DELETE" });
export const restoreRun = (projectId: string, id: string) =>
  ask<StoredDocument<Run>>(at("projects", projectId, "runs", id, "restore"), { method: "POST" });

// What is computed from a run

export const readInspection = (projectId: string, id: string, signal?: AbortSignal) =>
  ask<LogInspection>(at("projects", projectId, "runs", id, "inspection"), { signal });
/** A first look at the electrical log of a run. */
export const readCompanionInspection = (projectId: string, id: string, signal?: AbortSignal) =>
  ask<LogInspection>(at("projects", projectId, "runs", id, "companion", "inspection"), { signal });
export const readAlignment = (projectId: string, id: string, signal?: AbortSignal) =>
  ask<AlignmentPicture>(at("projects", projectId, "runs", id, "companion", "alignment"), { signal });
export const readReduction = (projectId: string, id: string, signal?: AbortSignal) =>
  ask<Reduction>(at("projects", projectId, "runs", id, "reduction"), { signal });

/** Voltage, current and speed of the plateaus of a run, with or without a propeller. */
export const readElectrical = (projectId: string, id: string, signal?: AbortSignal) =>
  ask<ElectricalRun>(at("projects", projectId, "runs", id, "electrical"), { signal });

/** Times in s from the start of the log; `points` is the number of steps. */
export function readTrace(
  projectId: string,
  id: string,
  { from, to, points }: { readonly from?: number; readonly to?: number; readonly points: number },
  signal?: AbortSignal,
) {
  const query = new URLSearchParams({ points: String(points) });
  if (from !== undefined) query.set("from", String(from));
  if (to !== undefined) query.set("to", String(to));
  return ask<Trace>(`${at("projects", projectId, "runs", id, "trace")}?${query}`, { signal });
}

/** Address of the log, byte for byte as it came. */
export const runFileAddress = (projectId: string, id: string) => at("projects", projectId, "runs", id, "file");

/** What is told of work that takes a while. */
interface Told<T> {
  /** Share that is done, from 0 to 1. */
  readonly progress: (fraction: number) => void;
  readonly outcome: (outcome: T) => void;
  readonly problem: (problem: ApiProblem) => void;
}

/** Reduces a long log. The returned function stops the work. */
export function watchReduction(
  projectId: string,
  id: string,
  { reduction, ...told }: Omit<Told<Reduction>, "outcome"> & { readonly reduction: (reduction: Reduction) => void },
): () => void {
  const address = at("projects", projectId, "runs", id, "reduction", "progress");
  return watch(address, "reduction", { ...told, outcome: reduction });
}

/** Checks the intervals of a run by draws. The returned function stops the work. */
export function watchMonteCarlo(projectId: string, id: string, told: Told<MonteCarlo>): () => void {
  return watch(at("projects", projectId, "runs", id, "monte-carlo", "progress"), "monteCarlo", told);
}

/** Work whose outcome comes as the event `name`. */
function watch<T>(address: string, name: string, told: Told<T>): () => void {
  const source = new EventSource(address);
  const bodyOf = (event: Event) => JSON.parse((event as MessageEvent<string>).data) as Record<string, unknown>;
  source.addEventListener("progress", (event) => told.progress(Number(bodyOf(event)["fraction"])));
  source.addEventListener(name, (event) => {
    source.close();
    told.outcome(bodyOf(event) as T);
  });
  source.addEventListener("problem", (event) => {
    source.close();
    const body = bodyOf(event);
    told.problem(problemFrom(typeof body["status"] === "number" ? body["status"] : 422, body));
  });
  source.onerror = () => {
    source.close();
    told.problem(
      problemFrom(0, { code: "page.no-answer", detail: "The workbench stopped answering during the work." }),
    );
  };
  return () => source.close();
}

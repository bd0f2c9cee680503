import { computed, signal } from "@preact/signals";
import type { PartKind } from "../../shared/model/parts/partKinds.ts";
import type { Project } from "../../shared/model/project.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { sentenceOf } from "../api/apiProblem.ts";
import * as api from "../api/client.ts";
import { goToProject, route } from "./route.ts";
import { forgetActs } from "./undo.ts";

export type Opening =
  | { readonly state: "opening" | "open" | "none" }
  | { readonly state: "refused"; readonly why: string };

const NO_PARTS: api.StoredParts = {
  ...{ propellers: [], motors: [], controllers: [], packs: [], tethers: [], gears: [], instruments: [] },
};

/** All projects of the workbench. */
export const projects = signal<readonly StoredDocument<Project>[]>([]);
/** The open project, its parts and its runs, as last read or written. */
export const project = signal<StoredDocument<Project> | null>(null);
export const parts = signal<api.StoredParts>(NO_PARTS);
export const runs = signal<readonly StoredDocument<Run>[]>([]);
/** How far the opening of a project has come. */
export const opening = signal<Opening>({ state: "opening" });

export const projectId = computed(() => project.value?.id ?? null);

/** Id of the open project. Throws where none is open: screens are only drawn with one open. */
export function openProjectId(): string {
  const id = projectId.value;
  if (id === null) throw new Error("No project is open.");
  return id;
}

/** Opens the project that the address names, else the first there is. */
export async function openFirstProject(): Promise<void> {
  opening.value = { state: "opening" };
  try {
    projects.value = await api.listProjects();
    const named = projects.value.find(({ id }) => id === route.value.project) ?? projects.value[0];
    if (named) await openProject(named.id);
    else opening.value = { state: "none" };
  } catch (thrown) {
    opening.value = { state: "refused", why: sentenceOf(thrown) };
  }
}

/** Reads a whole project and makes it the open one. */
export async function openProject(id: string): Promise<void> {
  opening.value = { state: "opening" };
  try {
    const [stored, storedParts, storedRuns] = await Promise.all([
      api.readProject(id),
      api.listParts(id),
      api.listRuns(id),
    ]);
    forgetActs();
    project.value = stored;
    parts.value = storedParts;
    runs.value = storedRuns;
    opening.value = { state: "open" };
    goToProject(id);
  } catch (thrown) {
    opening.value = { state: "refused", why: sentenceOf(thrown) };
  }
}

export async function reloadProject(): Promise<void> {
  keepProject(await api.readProject(openProjectId()));
}
export async function reloadParts(): Promise<void> {
  parts.value = await api.listParts(openProjectId());
}
export async function reloadRuns(): Promise<void> {
  runs.value = await api.listRuns(openProjectId());
}

export function keepProject(stored: StoredDocument<Project>): void {
  project.value = stored;
  projects.value = withDocument(projects.value, stored);
}
export function keepRun(stored: StoredDocument<Run>): void {
  runs.value = withDocument(runs.value, stored);
}
export function dropRun(id: string): void {
  runs.value = runs.value.filter((run) => run.id !== id);
}
export function keepPart<K extends PartKind>(kind: K, stored: api.StoredParts[K][number]): void {
  const list = parts.value[kind] as readonly StoredDocument<unknown>[];
  parts.value = { ...parts.value, [kind]: withDocument(list, stored) };
}
export function dropPart(kind: PartKind, id: string): void {
  const list = parts.value[kind] as readonly StoredDocument<unknown>[];
  parts.value = { ...parts.value, [kind]: list.filter((part) => part.id !== id) };
}

/** A stored part by id, or undefined. */
export function partOf<K extends PartKind>(kind: K, id: string | undefined): api.StoredParts[K][number] | undefined {
  return (parts.value[kind] as readonly api.StoredParts[K][number][]).find((part) => part.id === id);
}

function withDocument<T>(list: readonly StoredDocument<T>[], stored: StoredDocument<T>): readonly StoredDocument<T>[] {
  const place = list.findIndex(({ id }) => id === stored.id);
  return place < 0 ? [...list, stored] : list.with(place, stored);
}

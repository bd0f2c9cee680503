import { computed, effect, signal } from "@preact/signals";
import type { ShortlistEntry, StoredShortlist } from "../../../shared/model/shortlistStored.ts";
import { formatNumber } from "../../../shared/quantity/format.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import * as api from "../../api/shortlists.ts";
import { momentText } from "../../app/momentText.ts";
import { openProjectId, projectId } from "../../app/session.ts";
import { tell } from "../../app/toast.ts";
import { act } from "../../app/undo.ts";
import { request } from "./shortlistState.ts";

type Search =
  | { readonly state: "idle" }
  | { readonly state: "running"; readonly fraction: number }
  | { readonly state: "failed"; readonly why: string };

export const search = signal<Search>({ state: "idle" });
/** Searches that the workbench keeps, newest first. */
export const kept = signal<readonly ShortlistEntry[]>([]);
/** The search on show. */
const opened = signal<StoredShortlist | null>(null);

let stop: (() => void) | null = null;

/** Nothing of one project is shown in another. */
effect(() => {
  void projectId.value;
  stop?.();
  search.value = { state: "idle" };
  opened.value = null;
  kept.value = [];
});

export const shown = computed(() => {
  if (opened.value === null) return null;
  const { result, madeAt, seconds } = opened.value.document;
  return {
    ...{ result, id: opened.value.id },
    when: momentText(madeAt),
    took: `${formatNumber(seconds, 2)}\u202fs`,
  };
});

export function startSearch(): void {
  const project = openProjectId();
  search.value = { state: "running", fraction: 0 };
  stop = api.searchParts(project, request.value, {
    progress: (fraction) => {
      search.value = { state: "running", fraction };
    },
    outcome: (stored) => {
      search.value = { state: "idle" };
      opened.value = stored;
      void readKept();
    },
    problem: (problem) => {
      search.value = { state: "failed", why: problem.message };
    },
  });
}

export function cancelSearch(): void {
  stop?.();
  search.value = { state: "idle" };
}

export async function readKept(): Promise<void> {
  try {
    kept.value = (await api.listShortlists(openProjectId())).toReversed();
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
  }
}

/** Deletes a kept search; it can be taken back. */
export function deleteKept({ id, name, version }: ShortlistEntry): void {
  const project = openProjectId();
  let now = version;
  void act({
    label: `Deleted the search “${name}”`,
    run: async () => {
      await api.deleteShortlist(project, { id, version: now });
      if (opened.value?.id === id) opened.value = null;
      await readKept();
    },
    undo: async () => {
      now = (await api.restoreShortlist(project, id)).version;
      await readKept();
    },
  });
}

export async function openKept(id: string): Promise<void> {
  try {
    opened.value = await api.readShortlist(openProjectId(), id);
    search.value = { state: "idle" };
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
  }
}

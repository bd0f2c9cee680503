import { computed, effect, signal } from "@preact/signals";
import type { LiveResult, StoredRecording } from "../../../../shared/model/recording.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import * as api from "../../../api/recordings.ts";
import { route } from "../../../app/route.ts";
import { openProjectId, projectId, reloadRuns, runs } from "../../../app/session.ts";
import { tell } from "../../../app/toast.ts";
import { forgetActsAbout } from "../../../app/undo.ts";
import { keptOwners, type LineOwner } from "./keptLines.ts";
import { portLinks, unlinkPort } from "./portLink.ts";
import { sendings, sendLeftover } from "./sending.ts";

/** Recordings of the open project that have not ended. */
export const recordings = signal<readonly StoredRecording[]>([]);
/** What the one on show says so far. */
const lastResult = signal<{ readonly of: string; readonly result: LiveResult } | null>(null);
/** Recordings that lines are kept for in this browser, and that take none any more. */
export const stranded = signal<readonly LineOwner[]>([]);
/** Recordings that this page itself ends or puts away. */
export const leaving = new Set<string>();
/** The recording that is being made a run. */
export const finishing = signal<string | null>(null);
/** Why there is no newer result of the one on show; empty where all is well. */
export const trouble = signal("");
/** Whether the workbench answers about the one on show. */
export const answering = signal(true);

/** The recording on show: the address names it where it else names a run; where it names none, one that a port is read for. */
export const openRecording = computed(() => {
  const named = route.value.choices.get("run");
  const isReading = (id: string) => portLinks.value.get(id)?.state === "reading";
  return recordings.value.find(({ id }) => (named === null ? isReading(id) : id === named)) ?? null;
});
export const liveResult = computed(() =>
  lastResult.value?.of === openRecording.value?.id ? (lastResult.value?.result ?? null) : null,
);

/** Reads the recordings of the open project, and follows the one on show; started with the screen, stopped with it. */
export function followRecordings(): () => void {
  const openId = computed(() => openRecording.value?.id ?? null);
  // Lines may turn out to be stranded, or be let go, at any time.
  const refusedIds = computed(() => [...sendings.value].flatMap(([id, { refused }]) => (refused ? [id] : [])).join());
  const stops = [
    effect(() => {
      void refusedIds.value;
      if (projectId.value !== null) void findStranded(projectId.value, recordings.value);
    }),
    effect(() => {
      if (projectId.value !== null) void loadRecordings(projectId.value);
    }),
    effect(() => (openId.value === null ? undefined : follow(openId.value))),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

export async function loadRecordings(project: string): Promise<void> {
  try {
    const list = await api.listRecordings(project);
    if (project !== projectId.peek()) return;
    recordings.value = list;
    for (const recording of list) void sendLeftover(project, recording);
  } catch (thrown) {
    tell({ tone: "problem", text: `Recordings are not listed. ${sentenceOf(thrown)}` });
  }
}

function follow(id: string): () => void {
  const project = openProjectId();
  answering.value = true;
  trouble.value = "";
  return api.watchRecording(project, id, {
    held: (held) => {
      const known = recordings.peek().find((one) => one.id === id);
      if (known) keep({ ...known, held });
    },
    result: (result) => {
      lastResult.value = { of: id, result };
      trouble.value = "";
    },
    answers: (answers) => {
      answering.value = answers;
    },
    problem: (problem) => {
      trouble.value = problem.detail;
      if (problem.status === 404) void over(project, id);
    },
  });
}

/** A recording that was on show is over. Where it became a run that is on show now: it has the same id. */
async function over(project: string, id: string): Promise<void> {
  const name = recordings.peek().find((one) => one.id === id)?.document.name;
  const isOwnAct = leaving.has(id);
  forgetActsAbout(id);
  if (!isOwnAct) unlinkPort(id);
  await Promise.all([loadRecordings(project), reloadRuns()]);
  if (isOwnAct || name === undefined) return;
  const isRun = runs.peek().some((run) => run.id === id);
  const text = isRun ? `${name} has ended and is a run now` : `${name} was discarded, by another page or program`;
  tell({ tone: isRun ? "done" : "problem", text });
}

async function findStranded(project: string, open: readonly StoredRecording[]): Promise<void> {
  const owners = await keptOwners(project);
  stranded.value = owners.filter(({ recording }) => !open.some(({ id }) => id === recording));
}

/** Takes a recording into the list, or its newer form. */
export function keep(recording: StoredRecording): void {
  const place = recordings.peek().findIndex(({ id }) => id === recording.id);
  recordings.value = place < 0 ? [...recordings.peek(), recording] : recordings.peek().with(place, recording);
}

export function drop(id: string): void {
  recordings.value = recordings.peek().filter((one) => one.id !== id);
}

/** A recording of the list. Throws where it has ended. */
export function named(id: string): StoredRecording {
  const found = recordings.peek().find((one) => one.id === id);
  if (!found) throw new Error("This recording has ended; another tab may have kept or discarded it.");
  return found;
}

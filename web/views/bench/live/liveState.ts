import { computed, effect, signal } from "@preact/signals";
import type { LiveResult, Recording, StoredRecording } from "../../../../shared/model/recording.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import * as api from "../../../api/recordings.ts";
import { settlingConflict } from "../../../app/conflict.ts";
import { addRun } from "../../../app/edits.ts";
import { noteChoice, route } from "../../../app/route.ts";
import { openProjectId, projectId, reloadRuns } from "../../../app/session.ts";
import { tell } from "../../../app/toast.ts";
import { act, forgetActsAbout } from "../../../app/undo.ts";
import { portLinks, unlinkPort } from "./portLink.ts";
import { closeLine, sendLeftover, sent } from "./sending.ts";

/** Recordings of the open project that have not ended. */
export const recordings = signal<readonly StoredRecording[]>([]);
/** What the one on show says so far. */
const lastResult = signal<{ readonly of: string; readonly result: LiveResult } | null>(null);
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
  const stops = [
    effect(() => {
      if (projectId.value !== null) void loadRecordings(projectId.value);
    }),
    effect(() => (openId.value === null ? undefined : follow(openId.value))),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

async function loadRecordings(project: string): Promise<void> {
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
      // It was ended or discarded elsewhere.
      if (problem.status !== 404) return;
      forgetActsAbout(id);
      void Promise.all([loadRecordings(project), reloadRuns()]);
    },
  });
}

function keep(recording: StoredRecording): void {
  const place = recordings.peek().findIndex(({ id }) => id === recording.id);
  recordings.value = place < 0 ? [...recordings.peek(), recording] : recordings.peek().with(place, recording);
}

function drop(id: string): void {
  recordings.value = recordings.peek().filter((one) => one.id !== id);
}

function named(id: string): StoredRecording {
  const found = recordings.peek().find((one) => one.id === id);
  if (!found) throw new Error("This recording has ended; another tab may have kept or discarded it.");
  return found;
}

/** Begins a recording and shows it; undone by discarding it. Resolves to null where it was refused. */
export async function begin(name: string, header: string): Promise<StoredRecording | null> {
  let made: StoredRecording | null = null;
  await act({
    label: `Began to record ${name}`,
    get about() {
      return made?.id;
    },
    run: async () => {
      if (made) return bringBack(made.id);
      made = await api.beginRecording(openProjectId(), { name, ...(header.trim() !== "" && { header }) });
      keep(made);
    },
    undo: () => takeAway(made!.id),
  });
  if (made) noteChoice("run", (made as StoredRecording).id);
  return made;
}

/** Puts a recording away; undone by bringing it back. */
export function discard(id: string): Promise<boolean> {
  const { name } = named(id).document;
  return act({
    label: `Discarded the recording ${name}`,
    about: id,
    run: () => takeAway(id),
    undo: () => bringBack(id),
  });
}

async function takeAway(id: string): Promise<void> {
  unlinkPort(id);
  if (answering.peek()) await sent(id);
  const { version, document } = named(id);
  const write = (version: number) => api.discardRecording(openProjectId(), id, version);
  await settlingConflict({ what: document.name, version, write, load: () => loadRecordings(openProjectId()) });
  drop(id);
  await closeLine(id);
}

async function bringBack(id: string): Promise<void> {
  keep(await api.restoreRecording(openProjectId(), id));
}

/** Stores what is stated of a recording; undone by storing what was stated before. */
export function editRecording(id: string, label: string, change: (document: Recording) => Recording): Promise<boolean> {
  let before: Recording | null = null;
  let after: Recording | null = null;
  const write = async (document: Recording) => {
    const { version } = named(id);
    const save = (version: number) => api.saveRecording(openProjectId(), id, version, document);
    const load = () => loadRecordings(openProjectId());
    keep(await settlingConflict({ what: document.name, version, write: save, load }));
  };
  return act({
    label,
    about: id,
    run: () => {
      before ??= named(id).document;
      after ??= change(before);
      return write(after);
    },
    undo: () => write(before!),
  });
}

/** Lets the port go, waits for the last lines, and makes the recording a run, which is then on show. */
export async function keepAsRun(id: string): Promise<void> {
  const { name } = named(id).document;
  finishing.value = id;
  unlinkPort(id);
  await sent(id);
  const made = await addRun(name, () => api.endRecording(openProjectId(), id));
  finishing.value = null;
  if (made === null) return;
  drop(id);
  noteChoice("run", made.run.id);
  forgetActsAbout(id);
  await closeLine(id);
}

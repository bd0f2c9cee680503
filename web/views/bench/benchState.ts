import { computed, effect, signal } from "@preact/signals";
import type { LogInspection } from "../../../shared/model/log.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Trace } from "../../../shared/model/trace.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { addRunFile, addRunTable, readInspection, readTrace, sendCompanion } from "../../api/client.ts";
import { addRun, editRun } from "../../app/edits.ts";
import { reductions } from "../../app/reductions.ts";
import { noteChoice, route } from "../../app/route.ts";
import { openProjectId, partOf, projectId, runs } from "../../app/session.ts";
import { runRows } from "./benchModel.ts";
import type { FitAxis } from "./fitCharts.ts";

/** Steps of time that a trace is drawn in: about one a pixel of a wide screen. */
export const TRACE_STEPS = 1200;

export const fitAxis = signal<FitAxis>("thrustScale");
/** The plateau a person picked on the picture or in the table. */
export const pickedPlateau = signal<number | null>(null);
/** The name of the file that is being sent, while it is. */
export const uploading = signal<string | null>(null);
let uploadStop = new AbortController();

/** Gives up the file that is being sent and those after it; nothing of it is kept. Runs already made stay. */
export function stopUpload(): void {
  uploadStop.abort();
}

export const rows = computed(() => runRows(runs.value, (id) => reductions.value.get(id)));

/** The run on show: the one the address names, else the first of the list. */
export const openRun = computed(() => {
  const named = route.value.choices.get("run");
  const id = runs.value.some((run) => run.id === named) ? named : rows.value[0]?.id;
  return runs.value.find((run) => run.id === id) ?? null;
});
export const openState = computed(() => (openRun.value ? reductions.value.get(openRun.value.id) : undefined));

/** What was read of a log, or why it could not be. */
interface Read<T> {
  readonly of: string;
  readonly value: T | null;
  readonly problem: string;
}
const readingInspection = signal<Read<LogInspection> | null>(null);
const readingTrace = signal<Read<Trace> | null>(null);

export const inspection = computed(() => currentOf(readingInspection.value, openRun.value?.id));
export const trace = computed(() => currentOf(readingTrace.value, openRun.value?.id));

function currentOf<T>(read: Read<T> | null, runId: string | undefined): Read<T> | null {
  return read !== null && runId !== undefined && read.of.startsWith(runId) ? read : null;
}

/** Reads the first look and the trace of the run on show; started when the screen is, stopped when it goes. */
export function followOpenRun(): () => void {
  const runOf = computed(() => openRun.value?.id ?? null);
  // What a reading would mean depends on the propeller and motor; how the text is read, on what was stated about it.
  const inspectionOf = computed(() => {
    const run = openRun.value;
    if (run === null) return null;
    const { propellerId, confirmed, recipe, companion } = run.document;
    const { columns, reading, polePairs, motorId, fluid, corrections } = recipe;
    const dependsOn = [propellerId, confirmed, companion, columns, reading, polePairs, motorId, fluid, corrections];
    return `${run.id} ${JSON.stringify(dependsOn)}`;
  });
  // The trace is told in the units and calibration of the recipe, so it is read again when these change.
  const traceOf = computed(() => {
    const run = openRun.value;
    if (run === null) return null;
    const { recipe, companion } = run.document;
    const { columns, reading, polePairs, corrections, instrumentIds = {} } = recipe;
    const instruments = Object.values(instrumentIds).map((id) => [id, partOf("instruments", id)?.version]);
    return `${run.id} ${JSON.stringify([columns, reading, companion, polePairs, corrections, instruments])}`;
  });
  const stops = [
    effect(() =>
      reading(inspectionOf.value, readingInspection, (key, stop) =>
        readInspection(openProjectId(), key.split(" ")[0]!, stop),
      ),
    ),
    effect(() =>
      reading(traceOf.value, readingTrace, (key, stop) =>
        readTrace(openProjectId(), key.split(" ")[0]!, { points: TRACE_STEPS }, stop),
      ),
    ),
    effect(() => {
      void runOf.value;
      pickedPlateau.value = null;
    }),
    // The run on show is named, so that an edit that changes its place in the list does not bring another one up.
    effect(() => {
      if (runOf.value !== null && route.value.choices.get("run") === null) noteChoice("run", runOf.value);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

function reading<T>(
  key: string | null,
  target: { value: Read<T> | null },
  read: (key: string, signal: AbortSignal) => Promise<T>,
): (() => void) | undefined {
  if (key === null || projectId.peek() === null) return undefined;
  const aborter = new AbortController();
  read(key, aborter.signal).then(
    (value) => {
      target.value = { of: key, value, problem: "" };
    },
    (thrown) => {
      if (!aborter.signal.aborted) target.value = { of: key, value: null, problem: sentenceOf(thrown) };
    },
  );
  return () => aborter.abort();
}

/** Keeps each file as a run, one after the other, and shows the first of them. */
export async function takeFiles(files: readonly File[]): Promise<void> {
  let first: string | null = null;
  uploadStop = new AbortController();
  const { signal: stop } = uploadStop;
  for (const file of files) {
    if (stop.aborted) break;
    uploading.value = file.name;
    const made = await addRun(file.name, () => addRunFile(openProjectId(), file, stop));
    first ??= made?.run.id ?? null;
  }
  uploading.value = null;
  if (first !== null) noteChoice("run", first);
}

/** Sends the electrical log of a run and stores the run with it; resolves to what went wrong, or nothing. */
export async function takeCompanion(runId: string, file: File): Promise<string> {
  try {
    const { companion } = await sendCompanion(openProjectId(), runId, file);
    await editRun(runId, `Added ${file.name}`, (document) => ({ ...document, companion }));
    return "";
  } catch (thrown) {
    return sentenceOf(thrown);
  }
}

/** Keeps a typed table as a run and shows it. */
export async function takeTable(name: string, text: string): Promise<boolean> {
  const made = await addRun(name, () => addRunTable(openProjectId(), { name, text }));
  if (made !== null) noteChoice("run", made.run.id);
  return made !== null;
}

/** A change of the recipe of the run on show, stored and undoable. */
export function editRecipe(label: string, change: (recipe: Recipe) => Recipe): Promise<boolean> {
  const run = openRun.peek();
  if (run === null) return Promise.resolve(false);
  return editRun(run.id, label, (document) => ({ ...document, recipe: change(document.recipe) }));
}

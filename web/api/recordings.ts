import type { Stretch } from "../../shared/log/lineOutbox.ts";
import { type Delivery, deliveryOf } from "../../shared/log/lineSender.ts";
import type { Held, LiveResult, Recording, StoredRecording } from "../../shared/model/recording.ts";
import { type ApiProblem, problemFrom } from "./apiProblem.ts";
import type { NewRun } from "./client.ts";
import { ask } from "./request.ts";

const at = (projectId: string, ...parts: readonly string[]) =>
  `/api/${["projects", projectId, "recordings", ...parts].map(encodeURIComponent).join("/")}`;

export const listRecordings = async (projectId: string, signal?: AbortSignal) =>
  (await ask<{ recordings: StoredRecording[] }>(at(projectId), { signal })).recordings;
export const beginRecording = (projectId: string, start: { readonly name: string; readonly header?: string }) =>
  ask<StoredRecording>(at(projectId), { method: "POST", body: start });
export const saveRecording = (projectId: string, id: string, version: number, document: Recording) =>
  ask<StoredRecording>(at(projectId, id), { method: "PUT", body: { version, document } });
export const discardRecording = (projectId: string, id: string, version: number) =>
  ask<unknown>(`${at(projectId, id)}?version=${version}`, { method: "DELETE" });
export const restoreRecording = (projectId: string, id: string) =>
  ask<StoredRecording>(at(projectId, id, "restore"), { method: "POST" });
/** Makes it a run. */
export const endRecording = (projectId: string, id: string) =>
  ask<NewRun>(at(projectId, id, "end"), { method: "POST" });

/** Where a program posts the lines of a recording. */
export const linesAddress = (projectId: string, id: string) => at(projectId, id, "lines");
/** The lines as they came, for a link. */
export const recordingFileAddress = (projectId: string, id: string) => at(projectId, id, "file");

/** Posts a stretch of lines; never throws. */
export async function postLines(projectId: string, id: string, { offset, bytes }: Stretch): Promise<Delivery> {
  try {
    const response = await fetch(`${linesAddress(projectId, id)}?offset=${offset}`, {
      method: "POST",
      headers: { "content-type": "text/plain" },
      body: bytes as Uint8Array<ArrayBuffer>,
    });
    const body = await response.json();
    if (response.ok) return deliveryOf(response.status, { bytes: (body as Held).bytes });
    return deliveryOf(response.status, { why: problemFrom(response.status, body).detail });
  } catch {
    return deliveryOf(0, { why: "The workbench does not answer." });
  }
}

interface Told {
  readonly held: (held: Held) => void;
  readonly result: (result: LiveResult) => void;
  /** Whether the workbench answers. */
  readonly answers: (answers: boolean) => void;
  /** The recording is over (404), or what its lines say could not be found out this time. */
  readonly problem: (problem: ApiProblem) => void;
}

/** Wait before a stream that was closed for good is opened again, ms. */
const AGAIN_MS = 2000;
/** Status of a recording that has ended. */
const OVER = 404;

/** Follows a recording, through any number of dropped connections. The returned function stops. */
export function watchRecording(projectId: string, id: string, told: Told): () => void {
  let source: EventSource;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const bodyOf = (event: Event) => JSON.parse((event as MessageEvent<string>).data);
  const open = () => {
    source = new EventSource(at(projectId, id, "events"));
    source.onopen = () => told.answers(true);
    source.addEventListener("held", (event) => told.held(bodyOf(event) as Held));
    source.addEventListener("result", (event) => told.result(bodyOf(event) as LiveResult));
    source.addEventListener("problem", (event) => {
      source.close();
      const problem = problemFrom(Number(bodyOf(event).status), bodyOf(event));
      told.problem(problem);
      if (problem.status !== OVER) timer = setTimeout(open, AGAIN_MS);
    });
    source.onerror = () => {
      told.answers(false);
      // A dropped connection is taken up again by the browser; one that was refused is not.
      if (source.readyState === EventSource.CLOSED) timer = setTimeout(open, AGAIN_MS);
    };
  };
  open();
  return () => {
    clearTimeout(timer);
    source.close();
  };
}

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { LogInspection } from "../../shared/model/log.ts";
import { Recording, StoredRecording } from "../../shared/model/recording.ts";
import { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { storedSchema } from "../../shared/model/stored.ts";
import { KEPT_DAYS } from "../recording/clearRecordings.ts";
import { endRecording } from "../recording/endRecording.ts";
import { newRecording, RecordingStart } from "../recording/newRecording.ts";
import { NothingThere } from "../store/refusals.ts";
import { checkParts } from "../work/runJobs.ts";
import { AtVersion, change, Gone, InProject, OneRecording, type Workbench } from "./workbench.ts";

const tags = ["Recordings"];
const params = OneRecording;
const EndedRecording = z
  .strictObject({ run: storedSchema(Run), inspection: LogInspection })
  .describe("The run that it became")
  .meta({ id: "EndedRecording" });

const all = {
  tags,
  summary: "All recordings that have not ended",
  params: InProject,
  response: { 200: z.strictObject({ recordings: z.array(StoredRecording) }) },
};

const begun = {
  tags,
  summary: "Begin a recording",
  description: "Lines are then posted to it. It stands until it is ended or deleted, also when the workbench stops.",
  params: InProject,
  body: RecordingStart,
  response: { 201: StoredRecording },
};

const one = { tags, summary: "One recording, and what of it is held", params, response: { 200: StoredRecording } };

const changed = {
  tags,
  summary: "Change what is stated of a recording",
  params,
  body: change(Recording),
  response: { 200: StoredRecording },
};

const removed = {
  tags,
  summary: "Discard a recording",
  description: `Its lines are kept for ${KEPT_DAYS} days, so that it can be taken back.`,
  params,
  querystring: AtVersion,
  response: { 204: Gone },
};

const restored = {
  tags,
  summary: "Take back the discarding of a recording",
  description: "One that became a run can not be had back: its lines are the run's, which has the same id.",
  params,
  response: { 200: StoredRecording },
};

const ended = { tags, summary: "End a recording: it becomes a run", params, response: { 201: EndedRecording } };

/** Runs whose log is still being written. Registered under /api/projects/:projectId/recordings. */
export const recordingRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, recorder } = workbench;
  const withHeld = async (stored: StoredDocument<Recording>): Promise<StoredRecording> => ({
    ...stored,
    held: (await recorder.log(stored.id)).held,
  });

  app.get("", { schema: all }, async ({ params: { projectId } }) => ({
    recordings: await Promise.all(store.recordings(projectId).list().map(withHeld)),
  }));

  app.post("", { schema: begun }, async ({ params: { projectId }, body }, reply) =>
    reply.code(201).send(await withHeld(await newRecording(workbench, projectId, body))),
  );

  app.get("/:id", { schema: one }, async ({ params: { projectId, id } }) =>
    withHeld(store.recordings(projectId).find(id)),
  );

  app.put("/:id", { schema: changed }, async ({ params: { projectId, id }, body: { version, document } }) => {
    checkParts(store, projectId, document);
    return withHeld(store.recordings(projectId).write(id, version, document));
  });

  app.delete("/:id", { schema: removed }, async ({ params: { projectId, id }, query }, reply) => {
    store.recordings(projectId).remove(id, query.version);
    return reply.code(204).send(null);
  });

  app.post("/:id/restore", { schema: restored }, async ({ params: { projectId, id } }) => {
    if (!recorder.has(id)) throw new NothingThere("recording", id);
    return withHeld(store.recordings(projectId).restore(id));
  });

  app.post("/:id/end", { schema: ended }, async ({ params: { projectId, id } }, reply) => {
    store.recordings(projectId).find(id);
    return reply.code(201).send(await endRecording(workbench, projectId, id));
  });
};

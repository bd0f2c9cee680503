import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { Companion } from "../../shared/model/alignment.ts";
import { LogInspection } from "../../shared/model/log.ts";
import { Run } from "../../shared/model/run.ts";
import { storedSchema } from "../../shared/model/stored.ts";
import { newCompanion } from "../intake/newCompanion.ts";
import { newRun } from "../intake/newRun.ts";
import { uploadedFile } from "../intake/uploadedFile.ts";
import { checkCompanion, checkParts, checkSameFile } from "../work/runJobs.ts";
import { untilClosed } from "./untilClosed.ts";
import { AtVersion, change, Gone, InProject, OneRun, type Workbench } from "./workbench.ts";

const tags = ["Runs"];
const params = OneRun;
const StoredRun = storedSchema(Run).meta({ id: "StoredRun" });
const NewRun = z.strictObject({ run: StoredRun, inspection: LogInspection }).meta({ id: "NewRun" });
const NewCompanion = z.strictObject({ companion: Companion, inspection: LogInspection }).meta({ id: "NewCompanion" });
const Table = z
  .strictObject({
    name: z.string().trim().min(1).max(120).describe("What to call the run"),
    text: z.string().min(1).describe("The table as text: a header, then a row for each reading"),
  })
  .meta({ id: "TypedTable" });

const all = {
  tags,
  summary: "All runs",
  params: InProject,
  response: { 200: z.strictObject({ runs: z.array(StoredRun) }) },
};

const uploaded = {
  tags,
  summary: "Make a run from a log",
  description: "A multipart form with one file, in the field `file`. The bytes are kept as they come.",
  params: InProject,
  response: { 201: NewRun },
};

const typed = {
  tags,
  summary: "Make a run from a typed table",
  params: InProject,
  body: Table,
  response: { 201: NewRun },
};

const one = { tags, summary: "One run", params, response: { 200: StoredRun } };

const changed = { tags, summary: "Change a run", params, body: change(Run), response: { 200: StoredRun } };

const paired = {
  tags,
  summary: "Send the electrical log of the same run",
  description:
    "A multipart form with one file, in the field `file`. The bytes are kept; the run itself is changed by storing it with the companion that comes back.",
  params,
  response: { 201: NewCompanion },
};

const removed = { tags, summary: "Delete a run", params, querystring: AtVersion, response: { 204: Gone } };

const restored = { tags, summary: "Take back the deletion of a run", params, response: { 200: StoredRun } };

/** Runs of a project. Registered under /api/projects/:projectId/runs. */
export const runRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store } = workbench;

  app.get("", { schema: all }, async (request) => ({ runs: store.runs(request.params.projectId).list() }));

  app.post("", { schema: uploaded }, async (request, reply) => {
    const log = await uploadedFile(request);
    return reply.code(201).send(await newRun(workbench, request.params.projectId, log, untilClosed(reply)));
  });

  app.post("/table", { schema: typed }, async ({ params: { projectId }, body }, reply) => {
    const log = { fileName: "table.txt", runName: body.name, bytes: bytesOf(body.text) };
    return reply.code(201).send(await newRun(workbench, projectId, log));
  });

  app.get("/:id", { schema: one }, async ({ params: { projectId, id } }) => store.runs(projectId).find(id));

  app.put("/:id", { schema: changed }, async ({ params: { projectId, id }, body: { version, document } }) => {
    checkSameFile(store.runs(projectId).find(id).document, document);
    checkParts(store, projectId, document);
    checkCompanion(store, document);
    return store.runs(projectId).write(id, version, document);
  });

  app.post("/:id/companion", { schema: paired }, async (request, reply) => {
    const { projectId, id } = request.params;
    const { document } = store.runs(projectId).find(id);
    return reply.code(201).send(await newCompanion(workbench, document, await uploadedFile(request)));
  });

  app.delete("/:id", { schema: removed }, async ({ params: { projectId, id }, query }, reply) => {
    store.runs(projectId).remove(id, query.version);
    return reply.code(204).send(null);
  });

  app.post("/:id/restore", { schema: restored }, async ({ params: { projectId, id } }) =>
    store.runs(projectId).restore(id),
  );
};

async function* bytesOf(text: string) {
  yield new TextEncoder().encode(text);
}

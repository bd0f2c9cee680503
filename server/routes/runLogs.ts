import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { AlignmentPicture } from "../../shared/model/alignment.ts";
import { LogInspection } from "../../shared/model/log.ts";
import { Trace } from "../../shared/model/trace.ts";
import { companionLog, companionOf, inspectJob, instrumentsOf, logOf } from "../work/runJobs.ts";
import { encodedName } from "./attachment.ts";
import { sentAsIs } from "./sentAsIs.ts";
import { untilClosed } from "./untilClosed.ts";
import { OneRun, runOf, type Workbench } from "./workbench.ts";

const tags = ["Runs"];
const params = OneRun;

const seconds = (text: string) => z.coerce.number().describe(`${text}, s`).meta({ unit: "s", symbol: "t" });
const TraceSpan = z.strictObject({
  from: seconds("Start of the span, time in the log; the start of the log where absent").exactOptional(),
  to: seconds("End of the span; the end of the log where absent").exactOptional(),
  points: z.coerce.number().int().min(1).max(10_000).default(1000).describe("Steps the span is divided into"),
});

const PicturePoints = z.strictObject({
  points: z.coerce.number().int().min(2).max(10_000).default(600).describe("Points of time of the picture"),
});

const inspected = { tags, summary: "A first look at the log", params, response: { 200: LogInspection } };

const companionInspected = {
  tags,
  summary: "A first look at the electrical log",
  params,
  response: { 200: LogInspection },
};

const aligned = {
  tags,
  summary: "How the electrical log lies over the log",
  params,
  querystring: PicturePoints,
  response: { 200: AlignmentPicture },
};

const traced = { tags, summary: "The log for a chart", params, querystring: TraceSpan, response: { 200: Trace } };

const sent = {
  tags,
  summary: "The log, byte for byte as it came",
  params,
  response: sentAsIs("The file", "application/octet-stream"),
};

/** The log of a run and what it shows. Registered under /api/projects/:projectId/runs/:id. */
export const runLogRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, pool } = workbench;

  app.get("/inspection", { schema: inspected }, async (request, reply) =>
    pool.run(inspectJob(store, request.params.projectId, runOf(store, request.params).document), untilClosed(reply)),
  );

  app.get("/companion/inspection", { schema: companionInspected }, async (request, reply) => {
    const { file } = companionLog(store, runOf(store, request.params).document);
    return pool.run({ kind: "inspect", file }, untilClosed(reply));
  });

  app.get("/companion/alignment", { schema: aligned }, async (request, reply) => {
    const { document } = runOf(store, request.params);
    const { recipe } = document;
    const companion = companionLog(store, document);
    const job = { kind: "align", file: logOf(store, document), recipe, companion, ...request.query } as const;
    return pool.run(job, untilClosed(reply));
  });

  app.get("/trace", { schema: traced }, async (request, reply) => {
    const run = runOf(store, request.params).document;
    const { recipe } = run;
    const instruments = instrumentsOf(store, request.params.projectId, recipe);
    const job = { kind: "trace", file: logOf(store, run), recipe, ...instruments, ...request.query } as const;
    return pool.run({ ...job, ...companionOf(store, run) }, untilClosed(reply));
  });

  app.get("/file", { schema: sent }, async (request, reply) => {
    const { path, name } = logOf(store, runOf(store, request.params).document);
    reply.header("content-disposition", `attachment; filename*=${encodedName(name)}`);
    reply.header("content-length", (await stat(path)).size);
    return reply.type("application/octet-stream").send(createReadStream(path));
  });
};

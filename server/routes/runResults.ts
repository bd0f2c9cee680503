import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { LogInspection } from "../../shared/model/log.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { Trace } from "../../shared/model/trace.ts";
import { instrumentsOf, logOf, reduceJob } from "../work/runJobs.ts";
import { reductionEvents } from "./reductionEvents.ts";
import { untilClosed } from "./untilClosed.ts";
import { OneRun, type Workbench } from "./workbench.ts";

const tags = ["Runs"];

const seconds = (text: string) => z.coerce.number().describe(`${text}, s`).meta({ unit: "s", symbol: "t" });
const TraceSpan = z.strictObject({
  from: seconds("Start of the span, time in the log; the start of the log where absent").exactOptional(),
  to: seconds("End of the span; the end of the log where absent").exactOptional(),
  points: z.coerce.number().int().min(1).max(10_000).default(1000).describe("Steps the span is divided into"),
});

/** What is computed from the log of a run. Registered under /api/projects/:projectId/runs/:id. */
export const runResultRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, pool, reductions } = workbench;
  const params = OneRun;
  const runOf = ({ projectId, id }: z.infer<typeof OneRun>) => store.runs(projectId).find(id);

  const inspected = { tags, summary: "A first look at the log", params, response: { 200: LogInspection } };
  app.get("/inspection", { schema: inspected }, async (request, reply) =>
    pool.run({ kind: "inspect", file: logOf(store, runOf(request.params).document) }, untilClosed(reply)),
  );

  const reduced = { tags, summary: "Coefficients with their uncertainty", params, response: { 200: Reduction } };
  app.get("/reduction", { schema: reduced }, async (request, reply) =>
    reductions.reduce(reduceJob(store, request.params.projectId, runOf(request.params)), untilClosed(reply)),
  );

  const watched = {
    tags,
    summary: "The reduction with its progress",
    description:
      "Server-sent events: `progress` with `fraction` from 0 to 1, then `reduction` with the result or `problem` with problem details. Closing the connection stops the work.",
    params,
    response: { 200: { description: "Events", content: { "text/event-stream": { schema: z.string() } } } },
  };
  app.get("/reduction/progress", { schema: watched }, async ({ params }, reply) => {
    const events = reductionEvents(reductions, () => reduceJob(store, params.projectId, runOf(params)));
    return reply.type("text/event-stream").send(events as never);
  });

  const traced = { tags, summary: "The log for a chart", params, querystring: TraceSpan, response: { 200: Trace } };
  app.get("/trace", { schema: traced }, async (request, reply) => {
    const run = runOf(request.params).document;
    const { recipe } = run;
    const instruments = instrumentsOf(store, request.params.projectId, recipe);
    const job = { kind: "trace", file: logOf(store, run), recipe, ...instruments, ...request.query } as const;
    return pool.run(job, untilClosed(reply));
  });

  const bytes = {
    tags,
    summary: "The log, byte for byte as it came",
    params,
    response: { 200: { description: "The file", content: { "application/octet-stream": { schema: z.string() } } } },
  };
  app.get("/file", { schema: bytes }, async (request, reply) => {
    const { path, name } = logOf(store, runOf(request.params).document);
    reply.header("content-disposition", `attachment; filename*=UTF-8''${headerText(name)}`);
    reply.header("content-length", (await stat(path)).size);
    return reply.type("application/octet-stream").send(createReadStream(path) as never);
  });
};

/** A name in the form that RFC 8187 gives to text in headers. */
function headerText(name: string): string {
  return encodeURIComponent(name).replace(/['()*]/g, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase()}`);
}

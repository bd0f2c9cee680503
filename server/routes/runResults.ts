import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { DRAWS } from "../../shared/bench/monteCarloOfRun.ts";
import { AlignmentPicture } from "../../shared/model/alignment.ts";
import { MonteCarlo } from "../../shared/model/budget.ts";
import { ElectricalRun } from "../../shared/model/electrical.ts";
import { LogInspection } from "../../shared/model/log.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { Trace } from "../../shared/model/trace.ts";
import { companionLog, companionOf, inspectJob, instrumentsOf, logOf, reduceJob } from "../work/runJobs.ts";
import { untilClosed } from "./untilClosed.ts";
import { OneRun, type Workbench } from "./workbench.ts";
import { workEvents } from "./workEvents.ts";

const tags = ["Runs"];

const seconds = (text: string) => z.coerce.number().describe(`${text}, s`).meta({ unit: "s", symbol: "t" });
const TraceSpan = z.strictObject({
  from: seconds("Start of the span, time in the log; the start of the log where absent").exactOptional(),
  to: seconds("End of the span; the end of the log where absent").exactOptional(),
  points: z.coerce.number().int().min(1).max(10_000).default(1000).describe("Steps the span is divided into"),
});

const PicturePoints = z.strictObject({
  points: z.coerce.number().int().min(2).max(10_000).default(600).describe("Points of time of the picture"),
});

const DrawChoice = z.strictObject({
  draws: z.coerce
    .number()
    .int()
    .min(DRAWS.fewest)
    .max(DRAWS.most)
    .default(DRAWS.usual)
    .describe("Times that all inputs are drawn"),
  seed: z.coerce
    .number()
    .int()
    .min(0)
    .max(Number.MAX_SAFE_INTEGER)
    .default(1)
    .describe("The same gives the same draws"),
});

/** What is computed from the log of a run. Registered under /api/projects/:projectId/runs/:id. */
export const runResultRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, pool, reductions } = workbench;
  const params = OneRun;
  const runOf = ({ projectId, id }: z.infer<typeof OneRun>) => store.runs(projectId).find(id);

  const inspected = { tags, summary: "A first look at the log", params, response: { 200: LogInspection } };
  app.get("/inspection", { schema: inspected }, async (request, reply) =>
    pool.run(inspectJob(store, request.params.projectId, runOf(request.params).document), untilClosed(reply)),
  );

  const paired = { tags, summary: "A first look at the electrical log", params, response: { 200: LogInspection } };
  app.get("/companion/inspection", { schema: paired }, async (request, reply) => {
    const { file } = companionLog(store, runOf(request.params).document);
    return pool.run({ kind: "inspect", file }, untilClosed(reply));
  });

  const aligned = {
    tags,
    summary: "How the electrical log lies over the log",
    params,
    querystring: PicturePoints,
    response: { 200: AlignmentPicture },
  };
  app.get("/companion/alignment", { schema: aligned }, async (request, reply) => {
    const { document } = runOf(request.params);
    const { recipe } = document;
    const companion = companionLog(store, document);
    const job = { kind: "align", file: logOf(store, document), recipe, companion, ...request.query } as const;
    return pool.run(job, untilClosed(reply));
  });

  const reduced = { tags, summary: "Coefficients with their uncertainty", params, response: { 200: Reduction } };
  app.get("/reduction", { schema: reduced }, async (request, reply) =>
    reductions.reduce(reduceJob(store, request.params.projectId, runOf(request.params)), untilClosed(reply)),
  );

  const electrical = {
    tags,
    summary: "Voltage, current and speed of its plateaus",
    description:
      "For the constants of the motor. Answers for every run that logged voltage, current and rotation rate, with or without a propeller.",
    params,
    response: { 200: ElectricalRun },
  };
  app.get("/electrical", { schema: electrical }, async (request, reply) => {
    const { recipe, ...run } = runOf(request.params).document;
    const instruments = instrumentsOf(store, request.params.projectId, recipe);
    const document = { recipe, ...run };
    const job = { kind: "electrical", file: logOf(store, document), recipe, ...instruments } as const;
    return pool.run({ ...job, ...companionOf(store, document) }, untilClosed(reply));
  });

  const watched = {
    tags,
    summary: "The reduction with its progress",
    description:
      "Server-sent events: `progress` with `fraction` from 0 to 1, then `reduction` with the result or `problem` with problem details. Closing the connection stops the work.",
    params,
    response: { 200: { description: "Events", content: { "text/event-stream": { schema: z.string() } } } },
  };
  app.get("/reduction/progress", { schema: watched }, async ({ params }, reply) => {
    const events = workEvents("reduction", (options) =>
      // Inside the promise, so that a run that can not be reduced is told as an event.
      Promise.resolve().then(() => reductions.reduce(reduceJob(store, params.projectId, runOf(params)), options)),
    );
    return reply.type("text/event-stream").send(events as never);
  });

  const checked = {
    tags,
    summary: "The intervals checked by Monte Carlo",
    description: "All inputs are drawn from their distributions and the line is fitted again for each draw (JCGM 101).",
    params,
    querystring: DrawChoice,
    response: { 200: MonteCarlo },
  };
  const monteCarloJob = ({ projectId, id }: z.infer<typeof OneRun>, choice: z.infer<typeof DrawChoice>) =>
    ({ ...reduceJob(store, projectId, runOf({ projectId, id })), kind: "monteCarlo", ...choice }) as const;
  app.get("/monte-carlo", { schema: checked }, async ({ params, query }, reply) =>
    pool.run(monteCarloJob(params, query), untilClosed(reply)),
  );

  const checkWatched = {
    ...checked,
    summary: "The Monte Carlo check with its progress",
    description:
      "Server-sent events: `progress` with `fraction` from 0 to 1, then `monteCarlo` with the result or `problem` with problem details. Closing the connection stops the work.",
    response: watched.response,
  };
  app.get("/monte-carlo/progress", { schema: checkWatched }, async ({ params, query }, reply) => {
    const events = workEvents("monteCarlo", (options) =>
      Promise.resolve().then(() => pool.run(monteCarloJob(params, query), options)),
    );
    return reply.type("text/event-stream").send(events as never);
  });

  const traced = { tags, summary: "The log for a chart", params, querystring: TraceSpan, response: { 200: Trace } };
  app.get("/trace", { schema: traced }, async (request, reply) => {
    const run = runOf(request.params).document;
    const { recipe } = run;
    const instruments = instrumentsOf(store, request.params.projectId, recipe);
    const job = { kind: "trace", file: logOf(store, run), recipe, ...instruments, ...request.query } as const;
    return pool.run({ ...job, ...companionOf(store, run) }, untilClosed(reply));
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

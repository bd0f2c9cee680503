import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { DRAWS } from "../../shared/bench/monteCarloOfRun.ts";
import { MonteCarlo } from "../../shared/model/budget.ts";
import { ElectricalRun } from "../../shared/model/electrical.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { companionOf, instrumentsOf, logOf, reduceJob } from "../work/runJobs.ts";
import { EVENT_STREAM, EVENTS } from "./sentAsIs.ts";
import { untilClosed } from "./untilClosed.ts";
import { OneRun, runOf, type Workbench } from "./workbench.ts";
import { workEvents } from "./workEvents.ts";

const tags = ["Runs"];
const params = OneRun;

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

const reduced = { tags, summary: "Coefficients with their uncertainty", params, response: { 200: Reduction } };

const reductionWatched = {
  tags,
  summary: "The reduction with its progress",
  description:
    "Server-sent events: `progress` with `fraction` from 0 to 1, then `reduction` with the result or `problem` with problem details. Closing the connection stops the work.",
  params,
  response: EVENTS,
};

const electrical = {
  tags,
  summary: "Voltage, current and speed of its plateaus",
  description:
    "For the constants of the motor. Answers for every run that logged voltage, current and rotation rate, with or without a propeller.",
  params,
  response: { 200: ElectricalRun },
};

const checked = {
  tags,
  summary: "The intervals checked by Monte Carlo",
  description: "All inputs are drawn from their distributions and the line is fitted again for each draw (JCGM 101).",
  params,
  querystring: DrawChoice,
  response: { 200: MonteCarlo },
};

const checkWatched = {
  ...checked,
  summary: "The Monte Carlo check with its progress",
  description:
    "Server-sent events: `progress` with `fraction` from 0 to 1, then `monteCarlo` with the result or `problem` with problem details. Closing the connection stops the work.",
  response: EVENTS,
};

/** What is computed from the log of a run. Registered under /api/projects/:projectId/runs/:id. */
export const runResultRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { store, pool, reductions } = workbench;
  const reduceJobOf = (place: z.infer<typeof OneRun>) => reduceJob(store, place.projectId, runOf(store, place));
  const monteCarloJobOf = (place: z.infer<typeof OneRun>, choice: z.infer<typeof DrawChoice>) =>
    ({ ...reduceJobOf(place), kind: "monteCarlo", ...choice }) as const;

  app.get("/reduction", { schema: reduced }, async (request, reply) =>
    reductions.reduce(reduceJobOf(request.params), untilClosed(reply)),
  );

  app.get("/reduction/progress", { schema: reductionWatched }, async ({ params: place }, reply) => {
    // Async, so that a run that can not be reduced is told as an event.
    const events = workEvents("reduction", async (options) => reductions.reduce(reduceJobOf(place), options));
    return reply.type(EVENT_STREAM).send(events);
  });

  app.get("/electrical", { schema: electrical }, async (request, reply) => {
    const { document } = runOf(store, request.params);
    const { recipe } = document;
    const instruments = instrumentsOf(store, request.params.projectId, recipe);
    const job = { kind: "electrical", file: logOf(store, document), recipe, ...instruments } as const;
    return pool.run({ ...job, ...companionOf(store, document) }, untilClosed(reply));
  });

  app.get("/monte-carlo", { schema: checked }, async ({ params: place, query }, reply) =>
    pool.run(monteCarloJobOf(place, query), untilClosed(reply)),
  );

  app.get("/monte-carlo/progress", { schema: checkWatched }, async ({ params: place, query }, reply) => {
    const events = workEvents("monteCarlo", async (options) => pool.run(monteCarloJobOf(place, query), options));
    return reply.type(EVENT_STREAM).send(events);
  });
};

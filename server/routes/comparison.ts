import { setMaxListeners } from "node:events";
import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { compareStudy } from "../../shared/compare/compareStudy.ts";
import { groupNamed } from "../../shared/compare/compareVariants.ts";
import { firstMeasured } from "../../shared/compare/firstMeasured.ts";
import { ComparisonAnswer, ComparisonQuestion, ComparisonRequest } from "../../shared/model/comparisonRequest.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { reduceJob } from "../work/runJobs.ts";
import { factsOfStored, type RequestedGroups, requestedGroups } from "./studiedRuns.ts";
import { untilClosed } from "./untilClosed.ts";
import { InProject, type Workbench } from "./workbench.ts";

/** Comparison of variants. Registered under /api/projects/:projectId. */
export const comparisonRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const schema = {
    tags: ["Variants"],
    summary: "Variants against a baseline or each other",
    description:
      "Ratios of thrust at equal rotation rate, shaft power, electrical power and throttle, of the power equal thrust takes, and of static merit, with intervals and sentences; what the variants differ in and what goes with them; where asked for, a trend over a factor, an analysis of variance, and whether the answers hold without each run, with other fits and with other plateaus.",
    params: InProject,
    body: ComparisonRequest,
    response: { 200: ComparisonAnswer },
  };
  app.post("/comparison", { schema }, async (request, reply) => {
    const { signal } = untilClosed(reply);
    return compared(workbench, { ...request.params, asked: request.body, signal });
  });
};

interface Asked {
  readonly projectId: string;
  readonly asked: ComparisonRequest;
  readonly signal: AbortSignal;
}

async function compared(workbench: Workbench, { projectId, asked, signal }: Asked): Promise<ComparisonAnswer> {
  const { groups, warnings } = requestedGroups(workbench.store, projectId, asked);
  const { thrustClaim } = workbench.store.projects.find(projectId).document;
  const { name: baseline } = groupNamed(
    groups,
    asked.baseline ?? unaskedBaseline(workbench.store, projectId, { groups, asked }),
  );
  // Every run waits on the one signal of this request.
  setMaxListeners(0, signal);
  const studied = async (id: string) => {
    const facts = factsOfStored(workbench.store, projectId, workbench.store.runs(projectId).find(id));
    return { facts, reduction: await reduceForComparison(workbench, projectId, id, signal) };
  };
  const studies = groups.map(async ({ name, runs }) => ({ name, runs: await Promise.all(runs.map(studied)) }));
  const { groups: _, groupBy, filter, baseline: __, ...rest } = asked;
  const question = ComparisonQuestion.parse({
    ...(thrustClaim && { claim: thrustClaim }),
    ...rest,
  });
  const answer = compareStudy({ groups: await Promise.all(studies), baseline, question });
  return { ...answer, warnings: [...warnings, ...answer.warnings] };
}

/** The first of groups that were listed; of groups that were made the one that the project chose, else the one measured first. */
function unaskedBaseline(
  store: Workbench["store"],
  projectId: string,
  { groups, asked }: Pick<RequestedGroups, "groups"> & { readonly asked: ComparisonRequest },
): string {
  const [first] = groups;
  if (asked.groups !== undefined) return first!.name;
  const { baselineVariant } = store.projects.find(projectId).document;
  if (groups.some(({ name }) => name === baselineVariant)) return baselineVariant!;
  const entered = store.runs(projectId).list();
  const measured = firstMeasured(
    groups.map(({ name, runs }) => ({ name, ids: runs })),
    entered.map(({ id, document: { day } }) => ({ id, day })),
  );
  return measured?.name ?? first!.name;
}

/** A run that can not be reduced is told by its name: several are at stake. */
async function reduceForComparison(
  { store, reductions }: Workbench,
  projectId: string,
  id: string,
  signal: AbortSignal,
): Promise<Reduction> {
  const run = store.runs(projectId).find(id);
  try {
    return await reductions.reduce(reduceJob(store, projectId, run), { signal });
  } catch (reason) {
    if (!(reason instanceof InputProblem)) throw reason;
    const [place, { where }] = [`Run ${run.document.name}`, reason.problem];
    throw reason.at(where.startsWith(place) ? where : `${place}, ${where}`);
  }
}

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { compareAll } from "../../shared/compare/compareVariants.ts";
import { Comparison } from "../../shared/model/comparison.ts";
import { VariantGroup } from "../../shared/model/comparisonRequest.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { reduceJob } from "../work/runJobs.ts";
import { untilClosed } from "./untilClosed.ts";
import { InProject, type Workbench } from "./workbench.ts";

const Groups = z
  .strictObject({
    groups: z.array(VariantGroup).min(2).max(40).describe("Variants, each with the runs that were made of it"),
    baseline: z.string().describe("Name of the group that the others are compared with"),
  })
  .meta({ id: "ComparisonRequest" });
const Answer = z.strictObject({ comparisons: z.array(Comparison) });

/** Comparison of variants. Registered under /api/projects/:projectId. */
export const comparisonRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const schema = {
    tags: ["Variants"],
    summary: "Variants against a baseline",
    params: InProject,
    body: Groups,
    response: { 200: Answer },
  };
  app.post("/comparison", { schema }, async (request, reply) => {
    const { groups, baseline } = request.body;
    const { signal } = untilClosed(reply);
    const reduced = (id: string) => reduceForComparison(workbench, request.params.projectId, id, signal);
    const variants = groups.map(async ({ name, runs }) => ({ name, reductions: await Promise.all(runs.map(reduced)) }));
    return { comparisons: compareAll({ groups: await Promise.all(variants), baseline }) };
  });
};

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

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { BladeStrengthAnswer, BladeStrengthRequest, PrintedMaterial } from "../../shared/model/bladeStrength.ts";
import { FinishFit, FinishFitRequest } from "../../shared/model/finishFit.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import { LossReport, LossReportRequest } from "../../shared/model/lossReport.ts";
import { NamedSurface, SurfaceState } from "../../shared/model/surfaceState.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { surfaceOf } from "../../shared/propeller/finish/surfaceOf.ts";
import type { InFluid } from "../../shared/propeller/inFluid.ts";
import { lossReport } from "../../shared/propeller/losses/lossReport.ts";
import { predictedStrength } from "../../shared/propeller/strength/predictedStrength.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";

const tags = ["Computation"];

const strong = {
  tags,
  summary: "Stress, safety factor and deflection of a printed blade",
  description:
    "Under the load that blade elements predict and its own centrifugal pull. Thrown blades injure: read the cautions with the numbers.",
  body: BladeStrengthRequest,
  response: { 200: BladeStrengthAnswer },
};

const fitted = {
  tags,
  summary: "Section lift and drag of one or two finishes, and what smoothing could still bring",
  description:
    "Blade elements solved backwards from measured thrust and torque coefficients. Where no surface makes what was measured, that is said with what is most likely wrong.",
  body: FinishFitRequest,
  response: { 200: FinishFit },
};

const lost = {
  tags,
  summary: "How far a propeller is from ideal and from a good series propeller, and where its power goes",
  body: LossReportRequest,
  response: { 200: LossReport },
};

const surface = {
  tags,
  summary: "Roughness and lift factor of a named surface state, with where they come from",
  body: SurfaceState,
  response: { 200: NamedSurface },
};

const materials = {
  tags,
  summary: "Starting values for printed materials, every one common practice without source",
  response: { 200: z.array(PrintedMaterial) },
};

/** What blade elements say of surface, losses and strength; nothing is stored. Registered under /api/compute. */
export const computeBladeRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post("/blade-strength", { schema: strong }, async (request) => predictedStrength(inFluid(request.body)));

  app.post("/finish-fit", { schema: fitted }, async (request) => finishFit(inFluid(request.body)));

  app.post("/loss-report", { schema: lost }, async (request) => lossReport(inFluid(request.body)));

  app.post("/surface-state", { schema: surface }, async (request) => surfaceOf(request.body));

  app.get("/printed-materials", { schema: materials }, async () => [...PRINTED_MATERIALS]);
};

const inFluid = <T extends { readonly fluid: FluidState }>(request: T): InFluid<T> => ({
  ...request,
  fluid: fluidProperties(request.fluid),
});

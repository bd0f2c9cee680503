import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { BollardEstimate, BollardEstimateRequest } from "../../shared/model/bollardEstimate.ts";
import { DriveRequest, OperatingPoint } from "../../shared/model/drive.ts";
import { FluidProperties, FluidState } from "../../shared/model/fluid.ts";
import { bollardEstimate } from "../../shared/propeller/bollardEstimate.ts";

const tags = ["Computation"];

/** Computation from numbers alone; nothing is stored. Registered under /api/compute. */
export const computeRoutes: FastifyPluginAsyncZod = async (app) => {
  const driven = {
    tags,
    summary: "Bollard thrust and current of a thruster",
    body: DriveRequest,
    response: { 200: OperatingPoint },
  };
  app.post("/operating-point", { schema: driven }, async (request) => operatingPoint(request.body));

  const estimated = {
    tags,
    summary: "What momentum theory allows at bollard, and what a stated static merit makes of it",
    body: BollardEstimateRequest,
    response: { 200: BollardEstimate },
  };
  app.post("/bollard-estimate", { schema: estimated }, async (request) => bollardEstimate(request.body));

  const fluid = {
    tags,
    summary: "Density and viscosity of a fluid",
    body: FluidState,
    response: { 200: FluidProperties },
  };
  app.post("/fluid", { schema: fluid }, async (request) => fluidProperties(request.body));
};

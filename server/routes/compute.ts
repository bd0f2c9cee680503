import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { DriveRequest, OperatingPoint } from "../../shared/model/drive.ts";
import { FluidProperties, FluidState } from "../../shared/model/fluid.ts";
import { MomentumLimit, MomentumLimitRequest, momentumLimit } from "../compute/momentumLimit.ts";

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

  const limited = {
    tags,
    summary: "What momentum theory allows at bollard",
    body: MomentumLimitRequest,
    response: { 200: MomentumLimit },
  };
  app.post("/momentum-limit", { schema: limited }, async (request) => momentumLimit(request.body));

  const fluid = {
    tags,
    summary: "Density and viscosity of a fluid",
    body: FluidState,
    response: { 200: FluidProperties },
  };
  app.post("/fluid", { schema: fluid }, async (request) => fluidProperties(request.body));
};

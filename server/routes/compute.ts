import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { mountingPlan } from "../../shared/compare/planning/mountingPlan.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { BollardEstimate, BollardEstimateRequest } from "../../shared/model/bollardEstimate.ts";
import { DriveRequest, OperatingPoint } from "../../shared/model/drive.ts";
import { FloodedRotorDrag, FloodedRotorRequest } from "../../shared/model/floodedRotor.ts";
import { FluidProperties, FluidState } from "../../shared/model/fluid.ts";
import { MotorIdentification, MotorIdentificationRequest } from "../../shared/model/motorIdentification.ts";
import { MountingPlan, PlanRequest } from "../../shared/model/mountingPlan.ts";
import { identifyMotor } from "../../shared/motor/identifyMotor.ts";
import { floodedRotorDrag } from "../../shared/motor/wetRotor.ts";
import { bollardEstimate } from "../../shared/propeller/bollardEstimate.ts";

const tags = ["Computation"];

const driven = {
  tags,
  summary: "Bollard thrust and current of a thruster",
  body: DriveRequest,
  response: { 200: OperatingPoint },
};

const estimated = {
  tags,
  summary: "What momentum theory allows at bollard, and what a stated static merit makes of it",
  body: BollardEstimateRequest,
  response: { 200: BollardEstimate },
};

const identified = {
  tags,
  summary: "Constants of a motor from steady points",
  description:
    "Speed constant, resistance, no-load loss, loss of a flooded rotor, pole pairs and throttle map with their uncertainty. What the points can not tell is null, and a warning says what is needed.",
  body: MotorIdentificationRequest,
  response: { 200: MotorIdentification },
};

const flooded = {
  tags,
  summary: "Estimate of what water in the gaps of a motor costs",
  body: FloodedRotorRequest,
  response: { 200: FloodedRotorDrag },
};

const planned = {
  tags,
  summary: "How many mountings show a difference, and the sheet to run them by",
  description:
    "From the spread between mountings seen so far, by the power of a two-sided t test. With a sheet: the runs in random order inside blocks, drawn from a stated seed.",
  body: PlanRequest,
  response: { 200: MountingPlan },
};

const fluid = {
  tags,
  summary: "Density and viscosity of a fluid",
  body: FluidState,
  response: { 200: FluidProperties },
};

/** Computation from numbers alone; nothing is stored. Registered under /api/compute. */
export const computeRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post("/operating-point", { schema: driven }, async (request) => operatingPoint(request.body));

  app.post("/bollard-estimate", { schema: estimated }, async (request) => bollardEstimate(request.body));

  app.post("/motor-identification", { schema: identified }, async (request) => identifyMotor(request.body));

  app.post("/flooded-rotor", { schema: flooded }, async (request) => floodedRotorDrag(request.body));

  app.post("/plan", { schema: planned }, async (request) => mountingPlan(request.body));

  app.post("/fluid", { schema: fluid }, async (request) => fluidProperties(request.body));
};

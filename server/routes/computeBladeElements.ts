import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import {
  BladeElementsAnswer,
  BladeElementsRequest,
  BladeGeometryAnswer,
  BladeGeometryRequest,
  ModelEvidence,
} from "../../shared/model/bladeElements.ts";
import { SectionPolar, SectionPolarRequest } from "../../shared/model/sectionPolar.ts";
import { bladeElementsSweep } from "../../shared/propeller/blade/bladeElements.ts";
import { modelEvidence } from "../../shared/propeller/blade/modelEvidence.ts";
import { bladeGeometryOf } from "../../shared/sections/bladeGeometryOf.ts";
import { sectionPolarOf } from "../../shared/sections/sectionPolarOf.ts";

const tags = ["Computation"];

const solved = {
  tags,
  summary: "Thrust, torque and losses of a propeller from the shape of its blades, in one flow or a sweep",
  description:
    "Blade-element momentum at any advance speed and both directions of turning. A flow without solution is answered as such, with reason and radius. Sections of small printed blades are the least certain part: see the evidence.",
  body: BladeElementsRequest,
  response: { 200: BladeElementsAnswer },
};

const shaped = {
  tags,
  summary: "Shape of a blade from a table of its sections, or a plain outline to start from",
  body: BladeGeometryRequest,
  response: { 200: BladeGeometryAnswer },
};

const polar = {
  tags,
  summary: "Lift and drag of a section from a table",
  body: SectionPolarRequest,
  response: { 200: SectionPolar },
};

const evidence = {
  tags,
  summary: "What blade elements make of measured research propellers",
  response: { 200: ModelEvidence },
};

/** Blade elements and what they need; nothing is stored. Registered under /api/compute. */
export const computeBladeElementsRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post("/blade-elements", { schema: solved }, async ({ body }) => ({
    points: bladeElementsSweep({ ...body, fluid: fluidProperties(body.fluid) }),
  }));

  app.post("/blade-geometry", { schema: shaped }, async (request) => bladeGeometryOf(request.body));

  app.post("/section-polar", { schema: polar }, async (request) => sectionPolarOf(request.body.text));

  app.get("/blade-elements/evidence", { schema: evidence }, async () => modelEvidence());
};

import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { BestPitch, BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { BladeGeometry } from "../../shared/model/bladeGeometry.ts";
import { CarryOver, CarryOverRequest } from "../../shared/model/carryOver.ts";
import { CavitationRequest, CavitationResult } from "../../shared/model/cavitation.ts";
import { SeriesCurve, SeriesCurveRequest, SeriesGeometryRequest } from "../../shared/model/seriesPropeller.ts";
import { ThrustAtSpeed, ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { seriesCurve } from "../../shared/propeller/series/seriesCurve.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

const tags = ["Computation"];

const series = {
  tags,
  summary: "Open-water curve of a series propeller",
  description:
    "Wageningen B screws, or Ka screws in nozzle 19A, from bollard to zero thrust. Outside the tested range only where asked for, and flagged.",
  body: SeriesCurveRequest,
  response: { 200: SeriesCurve },
};

const geometry = {
  tags,
  summary: "Blade sections of a Wageningen B screw",
  body: SeriesGeometryRequest,
  response: { 200: BladeGeometry },
};

const pitch = {
  tags,
  summary: "Best pitch of a series propeller for a duty",
  description:
    "For a thrust the least power, for a power the most thrust, with the diameter or the rotation rate given; with both given the pitch that does the duty.",
  body: BestPitchRequest,
  response: { 200: BestPitch },
};

const cavitating = {
  tags,
  summary: "Cavitation and air drawn in, and the depth free of both",
  body: CavitationRequest,
  response: { 200: CavitationResult },
};

const carried = {
  tags,
  summary: "Coefficients from a stand carried over to the working water",
  description:
    "Air to water, fresh to sea, tank to open water, one size to another: each factor with size, doubt and reason.",
  body: CarryOverRequest,
  response: { 200: CarryOver },
};

const atSpeed = {
  tags,
  summary: "Thrust at speed from coefficients at rest and the best curve there is",
  body: ThrustAtSpeedRequest,
  response: { 200: ThrustAtSpeed },
};

/** What theory and published series say of a propeller; nothing is stored. Registered under /api/compute. */
export const computePropellerRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post("/series", { schema: series }, async (request) => seriesCurve(request.body));

  app.post("/series-geometry", { schema: geometry }, async (request) => seriesGeometry(request.body));

  app.post("/best-pitch", { schema: pitch }, async (request) => bestPitch(request.body));

  app.post("/cavitation", { schema: cavitating }, async (request) => cavitation(request.body));

  app.post("/carry-over", { schema: carried }, async (request) => carryOver(request.body));

  app.post("/thrust-at-speed", { schema: atSpeed }, async (request) => thrustAtSpeed(request.body));
};

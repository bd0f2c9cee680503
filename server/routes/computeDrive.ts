import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { controlTable } from "../../shared/drive/controlTable.ts";
import { driveTrainPoint } from "../../shared/drive/driveTrainPoint.ts";
import { ControlTable, ControlTableRequest } from "../../shared/model/controlTable.ts";
import { DriveTrainAnswer, DriveTrainRequest } from "../../shared/model/driveTrainPoint.ts";
import { WireAndFuse, WireAndFuseRequest } from "../../shared/model/wireAndFuse.ts";
import { wireAndFuse } from "../../shared/supply/wireAndFuse.ts";

const tags = ["Computation"];

const driven = {
  tags,
  summary: "Operating point of a drive train from its parts",
  description:
    "Pack with its charge and temperature, tether, controller, motor, gear and propeller, ahead or astern, at rest or at a speed. What limits and estimates rest on stands beside the point.",
  body: DriveTrainRequest,
  response: { 200: DriveTrainAnswer },
};

const commanded = {
  tags,
  summary: "What to command a thruster for a thrust, ahead and astern",
  description:
    "Command, throttle, thrust, currents and rotation rate for each supply voltage, with the dead band, up to the limit that is reached first.",
  body: ControlTableRequest,
  response: { 200: ControlTable },
};

const wired = {
  tags,
  summary: "Wire and fuse for a current over a length",
  description:
    "Smallest usual wire by voltage drop, by current density and by the fuse, and the next usual fuse; a suggestion that defers to local codes and data sheets.",
  body: WireAndFuseRequest,
  response: { 200: WireAndFuse },
};

/** What a drive train does and how it is wired; nothing is stored. Registered under /api/compute. */
export const computeDriveRoutes: FastifyPluginAsyncZod = async (app) => {
  app.post("/drive-train", { schema: driven }, async (request) => driveTrainPoint(request.body));

  app.post("/control-table", { schema: commanded }, async (request) => controlTable(request.body));

  app.post("/wire-and-fuse", { schema: wired }, async (request) => wireAndFuse(request.body));
};

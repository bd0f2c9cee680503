import type { FastifyPluginAsyncZod } from "fastify-type-provider-zod";
import { z } from "zod";
import { FluidState } from "../../shared/model/fluid.ts";
import { AxisDrag, VehicleDrag } from "../../shared/model/vehicle/drag.ts";
import { LayoutAnswer } from "../../shared/model/vehicle/layoutAnswer.ts";
import { LayoutRequest } from "../../shared/model/vehicle/layoutRequest.ts";
import { TetherRequest, TetherSolution } from "../../shared/model/vehicle/tetherShape.ts";
import { VehicleAnswer, VehicleRequest } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { untilClosed } from "./untilClosed.ts";
import type { Workbench } from "./workbench.ts";

const tags = ["Computation"];

const DragQuestion = z
  .strictObject({
    drag: VehicleDrag,
    water: FluidState.exactOptional().describe("Water of the vehicle, for drags that name none of their own"),
  })
  .meta({ id: "VehicleDragRequest" });

const whole = {
  tags,
  summary: "What a whole vehicle does",
  description:
    "Speeds each way with all thrusters on one bus, headings in a current, climbing, stopping, endurance, what makes it doubtful, what changes gain, and whether the requirement is met, with its probability. Draws of all inputs take seconds. Closing the connection stops the work.",
  body: VehicleRequest,
  response: { 200: VehicleAnswer },
};

const placed = {
  tags,
  summary: "What a layout of thrusters can do",
  description:
    "Greatest force and moment of each commanded motion with the others at zero, outlines of force, what is left after any loss, currents and the matrix for a control system.",
  body: LayoutRequest,
  response: { 200: LayoutAnswer },
};

const dragged = {
  tags,
  summary: "Drag of a vehicle along its axes",
  description:
    "Drag area, linear term and added mass of each way: typed, built up from shapes or fitted to measurements.",
  body: DragQuestion,
  response: { 200: AxisDrag },
};

const tethered = {
  tags,
  summary: "Shape of a tether in a current and the forces at its ends",
  description: "In three dimensions, with weight, normal and tangential drag, in a uniform or sheared current.",
  body: TetherRequest,
  response: { 200: TetherSolution },
};

/** What a vehicle does, and its parts by themselves; nothing is stored. Registered under /api/compute. */
export const computeVehicleRoutes: FastifyPluginAsyncZod<{ workbench: Workbench }> = async (app, { workbench }) => {
  const { pool } = workbench;
  app.post("/vehicle", { schema: whole }, async ({ body }, reply) =>
    pool.run({ kind: "vehicle", request: body }, untilClosed(reply)),
  );

  app.post("/vehicle-layout", { schema: placed }, async ({ body }, reply) =>
    pool.run({ kind: "vehicleLayout", request: body }, untilClosed(reply)),
  );

  app.post("/vehicle-drag", { schema: dragged }, async ({ body }, reply) =>
    pool.run({ kind: "vehicleDrag", drag: body.drag, water: body.water }, untilClosed(reply)),
  );

  app.post("/tether", { schema: tethered }, async ({ body }, reply) =>
    pool.run({ kind: "tether", request: body }, untilClosed(reply)),
  );
};

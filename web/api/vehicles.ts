import type { z } from "zod";
import type { VehicleAnswer, VehicleRequest } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { ask } from "./request.ts";

/** What a vehicle does, worked out by the workbench. */
export const computeVehicle = (request: z.input<typeof VehicleRequest>, signal?: AbortSignal) =>
  ask<VehicleAnswer>("/api/compute/vehicle", { method: "POST", body: request, signal });

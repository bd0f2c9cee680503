import type { Vehicle } from "../model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../model/vehicle/vehicleAnswer.ts";
import type { VehicleDraws } from "../model/vehicle/requirementAnswer.ts";
import { InputProblem } from "../quantity/problem.ts";

export function vehicleAnswer(vehicle: Vehicle, _drawing: VehicleDraws | null = null): VehicleAnswer {
  throw new InputProblem({
    code: "vehicle.no-answer",
    where: vehicle.name,
    found: "The vehicle can not be answered yet",
    needed: "",
    mend: "",
  });
}

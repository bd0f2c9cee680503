import { axisDrag } from "../../shared/vehicle/drag/axisDrag.ts";
import { layoutAnswer } from "../../shared/vehicle/layout/layoutAnswer.ts";
import { solveTether } from "../../shared/vehicle/tether/solveTether.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import type { Outcomes, WholeVehicleJob } from "./jobs.ts";

/** A vehicle or a part of it worked out in a thread, so that other requests need not wait for it. */
export function vehicleWork(job: WholeVehicleJob): Outcomes[WholeVehicleJob["kind"]] {
  switch (job.kind) {
    case "vehicle":
      return vehicleAnswer(job.request.vehicle, job.request.drawing, job.request.packs);
    case "vehicleLayout":
      return layoutAnswer(job.request);
    case "vehicleDrag":
      return axisDrag(job.drag, job.water);
    case "tether":
      return solveTether(job.request);
  }
}

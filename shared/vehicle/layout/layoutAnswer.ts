import type { LayoutAnswer } from "../../model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../model/vehicle/layoutRequest.ts";

export function layoutAnswer(request: LayoutRequest): LayoutAnswer {
  throw new Error(`not there yet for ${request.thrusters.length} thrusters`);
}

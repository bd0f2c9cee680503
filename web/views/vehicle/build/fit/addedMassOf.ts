import type { DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import type { VehicleBuild } from "../../../../../shared/model/vehicle/vehicleBuild.ts";
import { resolvedAddedMass } from "../../../../../shared/vehicle/drag/addedMass.ts";

/** A coast-down with the added mass that the vehicle states ahead, where it states none of its own. */
export function withAxisAddedMass(data: DragFitData, build: VehicleBuild | null): DragFitData {
  const given = build?.drag.surge?.addedMass;
  if (data.method !== "coastDown" || data.addedMass !== undefined || given === undefined) return data;
  const { value, standardUncertainty } = resolvedAddedMass(given, data.density);
  return { ...data, addedMass: { value, standardUncertainty } };
}

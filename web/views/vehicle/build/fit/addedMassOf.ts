import type { DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import type { VehicleBuild } from "../../../../../shared/model/vehicle/vehicleBuild.ts";
import { resolvedAddedMass } from "../../../../../shared/vehicle/drag/addedMass.ts";
import { type DragWay, wordsOf } from "../drag/directions.ts";

/** A coast-down with the added mass of its axis, where it states none of its own: as the engine reads it. */
export function withAxisAddedMass(data: DragFitData, build: VehicleBuild | null, way: DragWay): DragFitData {
  const given = build?.drag[wordsOf(way).axis]?.addedMass;
  if (data.method !== "coastDown" || data.addedMass !== undefined || given === undefined) return data;
  const { value, standardUncertainty } = resolvedAddedMass(given, data.density);
  return { ...data, addedMass: { value, standardUncertainty } };
}

import type { AxisReach, Demand } from "../../model/vehicle/layoutAnswer.ts";
import type { Axis, LayoutRequest } from "../../model/vehicle/layoutRequest.ts";
import { AXIS_WORDS, rowOf } from "./axes.ts";
import { demandOf } from "./demand.ts";
import type { LayoutModel } from "./layoutModel.ts";

/** Every held axis both ways, by the limits of thrust and, where `current` is a number of A for thrust, within the bus. */
export function axisReach(model: LayoutModel, held: readonly Axis[], current: number | null): AxisReach[] {
  return held.map((axis) => ({
    axis,
    unit: AXIS_WORDS[axis].unit,
    ways: (["positive", "negative"] as const).map((way) => {
      const ask = { axis, way, held, limits: model.limits, current: null };
      const greatest = demandOf(model, ask);
      const fits = current === null || greatest.withinBusLimit === true;
      const withBusLimit = current === null ? null : fits ? greatest : demandOf(model, { ...ask, current });
      return { way, word: AXIS_WORDS[axis][way], greatest, withBusLimit, tilt: tiltOf(model.request, greatest) };
    }),
  }));
}

/** Height of the centre of mass below that of buoyancy, m. */
export function rightingHeight({ righting, centreOfMass }: LayoutRequest): number | null {
  return righting ? (centreOfMass?.z ?? 0) - righting.centreOfBuoyancy.z : null;
}

/**
 * Heel and trim at which the righting moment equals the moment that a demand leaves, rad.
 *
 *   sin φ = K / (W h),  sin θ = M / (W h)        h = z_G − z_B
 *
 * Source   hydrostatics, e.g. Fossen, Handbook of Marine Craft and Motion Control (2011), eq. 4.6, with W = B, from memory.
 * Assumes  weight and buoyancy equal, one above the other at rest; each angle as if the other were zero.
 */
function tiltOf(request: LayoutRequest, { wrench, reaction }: Demand): AxisReach["ways"][number]["tilt"] {
  const height = rightingHeight(request);
  if (height === null || !request.righting) return null;
  const angle = (axis: "roll" | "pitch") => {
    const row = rowOf(axis);
    const moment = wrench[row]! + (reaction?.[row - 3] ?? 0);
    if (Math.abs(moment) < 1e-12) return 0;
    const sine = moment / (request.righting!.weight * height);
    return height > 0 && Math.abs(sine) <= 1 ? Math.asin(sine) : null;
  };
  return { roll: angle("roll"), pitch: angle("pitch") };
}

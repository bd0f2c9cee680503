import type { Axis } from "../../model/vehicle/layoutRequest.ts";
import { AXES } from "./axes.ts";
import type { Ask } from "./greatestAlong.ts";
import type { Limits } from "./layoutModel.ts";

export type Way = "positive" | "negative";

export const unitWrench = (axis: Axis, sign = 1): number[] => AXES.map((one) => (one === axis ? sign : 0));

export interface AxisAsk {
  readonly axis: Axis;
  readonly way: Way;
  readonly held: readonly Axis[];
  readonly limits: Limits;
  readonly current: number | null;
}

/** One axis as far as it goes one way while the other held axes stay at zero. */
export function askOf({ axis, way, held, limits, current }: AxisAsk): Ask {
  const hold = held.filter((one) => one !== axis).map((one) => ({ wrench: unitWrench(one), at: 0 }));
  return { along: unitWrench(axis, way === "positive" ? 1 : -1), hold, limits, current };
}

import type { VehicleRequirement } from "../../../../shared/model/vehicle/requirement.ts";
import type { Dimension } from "../../../../shared/quantity/units.data.ts";
import { without } from "./buildModel.ts";

/** Keys of what can be asked; `againstCurrent` and `tetherLength` are 0 where nothing is said. */
export type DemandKey = Exclude<keyof VehicleRequirement, "confidence">;

export interface Demanded {
  readonly key: DemandKey;
  readonly label: string;
  readonly symbol?: string;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly help?: string;
  /** Nothing said is 0 and not a demand that is absent. */
  readonly zero?: boolean;
}

/** All that can be asked, in the order people think of it. */
export const DEMANDS: readonly { readonly title: string; readonly fields: readonly Demanded[] }[] = [
  {
    title: "How fast, and in what",
    fields: [
      { key: "speed", label: "Speed ahead over the ground", symbol: "V", dimension: "speed", unit: "m/s" },
      {
        ...{ key: "againstCurrent", label: "Against a current of", symbol: "U", dimension: "speed", unit: "m/s" },
        ...{ help: "Left empty, still water.", zero: true },
      },
      {
        ...{ key: "tetherLength", label: "With this much tether out", symbol: "L", dimension: "length", unit: "m" },
        ...{ help: "Left empty, none.", zero: true },
      },
      { key: "depth", label: "At a depth of", symbol: "h", dimension: "length", unit: "m" },
    ],
  },
  {
    title: "Holding and stopping",
    fields: [
      {
        ...{ key: "holdCurrent", label: "Hold its place in a current of", symbol: "U", dimension: "speed" },
        ...{ unit: "m/s", help: "From any side." },
      },
      {
        ...{ key: "stoppingDistance", label: "Stop within", symbol: "s", dimension: "length", unit: "m" },
        ...{ help: "From that speed, full astern." },
      },
    ],
  },
  {
    title: "Lifting and lasting",
    fields: [
      {
        ...{ key: "lift", label: "Lift a mass in water of", symbol: "m", dimension: "mass", unit: "kg" },
        ...{ help: "As a scale under water shows it." },
      },
      { key: "climb", label: "Climbing with it at", symbol: "w", dimension: "speed", unit: "m/s" },
      {
        ...{ key: "endurance", label: "Work for", symbol: "t", dimension: "time", unit: "min" },
        ...{ help: "By its mission, or at that speed." },
      },
    ],
  },
];

const FROM_ZERO: readonly DemandKey[] = ["againstCurrent", "tetherLength"];

/** A requirement with one demand changed; null takes it away. */
export function withDemand(now: VehicleRequirement, key: DemandKey, si: number | null): VehicleRequirement {
  if (si !== null) return { ...now, [key]: si };
  return FROM_ZERO.includes(key) ? { ...now, [key]: 0 } : (without(now, key) as VehicleRequirement);
}

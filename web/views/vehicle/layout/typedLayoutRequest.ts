import { LayoutRequest } from "../../../../shared/model/vehicle/layoutRequest.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";

/** Thrust that one thruster of a drive makes, typed, N. */
export interface TypedLimit {
  readonly forward: number;
  readonly reverse: number;
  /** Relative standard uncertainty of both. */
  readonly doubt: number;
}

/** What a small thruster makes. Common practice, no source. */
export const FIRST_LIMIT: TypedLimit = { forward: 20, reverse: 12, doubt: 0.05 };

/** The layout of a build with stated thrusts; currents and torques are not known then. */
export function requestOf(build: VehicleBuild, limit: (drive: string) => TypedLimit): LayoutRequest {
  return LayoutRequest.parse({
    thrusters: build.thrusters.map(({ drive, ...place }) => {
      const { forward, reverse, doubt } = limit(drive);
      const known = (value: number) => ({ value, standardUncertainty: doubt * value });
      return { ...place, drive, limits: { forward: known(forward), reverse: known(reverse) } };
    }),
  });
}

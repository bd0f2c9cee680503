import type { DriveRequest } from "../../model/drive.ts";
import { type Warning, warning } from "../../quantity/warning.ts";

/** Where no part of a drive says what it bears: the answer may then ask more of it than it survives. */
export function unstatedLimits({ heat, limits }: DriveRequest): Warning[] {
  const { motorCurrent, motorPower, controllerCurrent } = limits;
  if ([motorCurrent, motorPower, controllerCurrent, heat?.temperatureLimit].some((bound) => bound !== undefined))
    return [];
  return [
    warning({
      code: "vehicle.limits-not-stated",
      where: "motor",
      found:
        "Neither motor nor controller states what current, power or heat it bears, so nothing but full throttle bounds the answer",
      needed: "the continuous current of both, from the makers' data sheets",
      mend: "State them: a part that is asked for more burns, and a pack with it",
    }),
  ];
}

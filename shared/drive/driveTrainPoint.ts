import type { DriveTrainAnswer, DriveTrainRequest } from "../model/driveTrainPoint.ts";
import { driveRequestOf } from "./driveRequestOf.ts";
import { operatingPoint } from "./operatingPoint.ts";

/**
 * The operating point of a drive train, with the request it came from and what that rests on.
 *
 * Source, throws as `driveRequestOf` and `operatingPoint`.
 */
export function driveTrainPoint({ train, running }: DriveTrainRequest): DriveTrainAnswer {
  const { request, supply, grounds, warnings } = driveRequestOf(train, running);
  return { point: operatingPoint(request), request, supply, grounds: [...grounds], warnings: [...warnings] };
}

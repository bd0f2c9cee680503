import { DriveRequest, type DriveRequestInput } from "../../shared/model/drive.ts";

/** An invented thruster of the Dabchick: 500 rpm/V, 70 mm propeller, fresh water, four-cell pack. */
export const DABCHICK_THRUSTER = {
  speedConstant: 52.36,
  motorResistance: 0.1,
  noLoadCurrent: 0.6,
  noLoadCurrentSlope: 0.0005,
  controllerResistance: 0.01,
  supplyVoltage: 16,
  supplyResistance: 0.15,
  hotelPower: 12,
  thrusters: 2,
  diameter: 0.07,
  thrustCoefficient: 0.3,
  torqueCoefficient: 0.035,
  density: 998.6,
  throttle: 0.6,
} satisfies DriveRequestInput;

export function driveRequest(change: Partial<DriveRequestInput> = {}): DriveRequest {
  return DriveRequest.parse({ ...DABCHICK_THRUSTER, ...change });
}

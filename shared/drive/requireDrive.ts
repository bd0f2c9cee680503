import type { DriveRequest } from "../model/drive.ts";
import { nonNegative, positive } from "../quantity/domain.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { throttleShare } from "./throttleShare.ts";

const CHECKS = {
  speedConstant: (x) => positive(x, "speed constant K_v", "rad/(V·s)"),
  motorResistance: (x) => nonNegative(x, "winding resistance", "Ω"),
  noLoadCurrent: (x) => nonNegative(x, "no-load current", "A"),
  noLoadCurrentSlope: (x) => nonNegative(x, "growth of the no-load current", "A·s/rad"),
  controllerResistance: (x) => nonNegative(x, "controller resistance", "Ω"),
  supplyVoltage: (x) => positive(x, "open-circuit voltage", "V"),
  supplyResistance: (x) => nonNegative(x, "supply resistance", "Ω"),
  hotelPower: (x) => nonNegative(x, "hotel load", "W"),
  thrusters: (x) => positive(x, "number of thrusters", ""),
  diameter: (x) => positive(x, "propeller diameter", "m"),
  thrustCoefficient: (x) => positive(x, "thrust coefficient K_T", ""),
  torqueCoefficient: (x) => positive(x, "torque coefficient K_Q", ""),
  density: (x) => positive(x, "density", "kg/m³"),
  throttle: throttleShare,
} as const satisfies Partial<Record<keyof DriveRequest, (x: number) => number>>;

const LIMIT_UNITS = { motorCurrent: "A", motorPower: "W", controllerCurrent: "A", supplyCurrent: "A" } as const;

/**
 * Refuses a request that is not physical. For what passes, current, voltage and power all rise with the angular
 * velocity, so the steady state is unique.
 *
 * Throws   OutOfDomain whose `where` is the field.
 */
export function requireDrive(request: DriveRequest): void {
  for (const [field, check] of Object.entries(CHECKS)) {
    named(field, () => check(request[field as keyof typeof CHECKS]));
  }
  for (const [field, unit] of Object.entries(LIMIT_UNITS)) {
    const limit = request.limits[field as keyof typeof LIMIT_UNITS];
    if (limit !== undefined) named(`limits.${field}`, () => positive(limit, "limit", unit));
  }
  for (const [field, u] of Object.entries(request.uncertainties)) {
    named(`uncertainties.${field}`, () => nonNegative(u, "standard uncertainty", ""));
  }
}

function named(where: string, check: () => unknown): void {
  try {
    check();
  } catch (refusal) {
    if (refusal instanceof OutOfDomain) {
      throw new OutOfDomain({ ...refusal.problem, code: "drive.not-physical", where });
    }
    throw refusal;
  }
}

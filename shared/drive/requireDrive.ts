import type { DriveRequest } from "../model/drive.ts";
import { nonNegative, positive, within } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { coefficientAt, endOfCurve, slopeOverRate } from "./curveEnd.ts";
import { throttleShare } from "./throttleShare.ts";

const CHECKS = {
  speedConstant: (x) => positive(x, "speed constant K_v", "rad/(V·s)"),
  motorResistance: (x) => nonNegative(x, "winding resistance", "Ω"),
  noLoadCurrent: (x) => nonNegative(x, "no-load current", "A"),
  noLoadCurrentSlope: (x) => nonNegative(x, "growth of the no-load current", "A·s/rad"),
  gearRatio: (x) => positive(x, "gear ratio", ""),
  gearEfficiency: (x) => within(positive(x, "efficiency of the gear", ""), 0, 1, "efficiency of the gear", ""),
  controllerResistance: (x) => nonNegative(x, "controller resistance", "Ω"),
  freewheelVoltage: (x) => nonNegative(x, "freewheel voltage", "V"),
  switchingLoss: (x) => within(x, 0, 0.5, "switching loss", ""),
  standbyPower: (x) => nonNegative(x, "standby power", "W"),
  supplyVoltage: (x) => positive(x, "open-circuit voltage", "V"),
  supplyResistance: (x) => nonNegative(x, "supply resistance", "Ω"),
  hotelPower: (x) => nonNegative(x, "hotel load", "W"),
  thrusters: (x) => positive(x, "number of thrusters", ""),
  diameter: (x) => positive(x, "propeller diameter", "m"),
  thrustCoefficient: (x) => positive(x, "thrust coefficient K_T", ""),
  torqueCoefficient: (x) => positive(x, "torque coefficient K_Q", ""),
  advanceSpeed: (x) => nonNegative(x, "advance speed", "m/s"),
  density: (x) => positive(x, "density", "kg/m³"),
  throttle: throttleShare,
} as const satisfies Partial<Record<keyof DriveRequest, (x: number) => number>>;

const LIMIT_UNITS = {
  motorCurrent: "A",
  motorPower: "W",
  controllerCurrent: "A",
  supplyCurrent: "A",
  fuseCurrent: "A",
  tetherCurrent: "A",
  supplyVoltage: "V",
  cavitation: "rev/s",
  ventilation: "rev/s",
} as const satisfies Record<keyof DriveRequest["limits"], string>;

/** Temperatures that water, air and the datum of a resistance can have, K. */
const TEMPERATURE = { low: 200, high: 500 };

/**
 * Refuses a request that is not physical. For what passes, current, voltage and power all rise with the angular
 * velocity, so the steady state is unique.
 *
 * Throws   OutOfDomain whose `where` is the field: `drive.not-physical`; at speed `drive.open-water-missing` without
 *          curves, and `drive.not-monotone` for curves by which thrust or torque falls as the propeller turns faster.
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
  requireHeat(request);
  requireWetTorque(request);
  if (request.advanceSpeed > 0) requireOpenWater(request);
}

function requireHeat({ heat }: DriveRequest): void {
  if (heat === undefined) return;
  const { low, high } = TEMPERATURE;
  for (const field of ["surroundings", "resistanceTemperature"] as const) {
    named(`heat.${field}`, () => within(heat[field], low, high, "temperature", "K"));
  }
  named("heat.thermalResistance", () => nonNegative(heat.thermalResistance, "thermal resistance", "K/W"));
  const { temperatureLimit } = heat;
  if (temperatureLimit !== undefined) {
    named("heat.temperatureLimit", () => positive(temperatureLimit, "greatest winding temperature", "K"));
  }
}

function requireWetTorque({ wetTorque }: DriveRequest): void {
  if (wetTorque === undefined) return;
  named("wetTorque.coefficient", () => nonNegative(wetTorque.coefficient, "coefficient of the loss in water", ""));
  named("wetTorque.exponent", () => within(wetTorque.exponent, 1, 3, "exponent of the loss in water", ""));
}

function requireOpenWater({ openWater, advanceSpeed, thrustCoefficient, torqueCoefficient }: DriveRequest): void {
  if (openWater === undefined) {
    throw new OutOfDomain({
      code: "drive.open-water-missing",
      where: "openWater",
      found: `At ${formatNumber(advanceSpeed)} m/s the change of thrust and torque with the advance ratio is needed, and none is given`,
      needed: "polynomials of K_T and K_Q in J",
      mend: "Take them from runs at speed, a series or blade elements; or ask for the point at rest",
    });
  }
  named("openWater.greatestAdvanceRatio", () => positive(openWater.greatestAdvanceRatio, "greatest advance ratio", ""));
  for (const [field, change] of [
    ["thrust", openWater.thrust],
    ["torque", openWater.torque],
  ] as const) {
    change.forEach((c, i) => {
      named(`openWater.${field}[${i}]`, () => nonNegative(Math.abs(c), "coefficient", ""));
    });
  }
  const end = endOfCurve(torqueCoefficient, openWater);
  requireRising({ name: "torque", atRest: torqueCoefficient, change: openWater.torque, end });
  requireRising({ name: "thrust", atRest: thrustCoefficient, change: openWater.thrust, end });
}

/** Places at which a curve is looked at; they are smooth on this scale. */
const PLACES = 400;

interface Rising {
  readonly name: "thrust" | "torque";
  readonly atRest: number;
  readonly change: readonly number[];
  /** Advance ratio up to which it is looked at. */ readonly end: number;
}

/** Refuses a coefficient by which K n² falls with n where it is positive: 2 K − J K′ < 0. */
function requireRising({ name, atRest, change, end }: Rising): void {
  for (let place = 1; place <= PLACES; place++) {
    const J = (end * place) / PLACES;
    if (slopeOverRate(atRest, change, J) > 0 || coefficientAt(atRest, change, J) < 0) continue;
    throw new OutOfDomain({
      code: "drive.not-monotone",
      where: `openWater.${name}`,
      found: `By this curve the ${name} falls as the propeller turns faster, at an advance ratio of ${formatNumber(J)}`,
      needed: `a curve whose ${name} rises with the rotation rate up to the advance ratio ${formatNumber(end)}`,
      mend: "Check the coefficients, or state a smaller greatest advance ratio",
    });
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

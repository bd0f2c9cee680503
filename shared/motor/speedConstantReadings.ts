import { formatNumber } from "../quantity/format.ts";
import { requireUnit } from "../quantity/unit.ts";
import type { MotorConstants } from "./motorConstants.ts";
import { motorProblems } from "./motorProblems.ts";

/** What an implausible speed constant may have been meant as. */
export interface SpeedConstantReading {
  /** rad/(V·s). */ readonly speedConstant: number;
  /** "it is 470 rpm/V: the number was in rpm/V and was read in rad/(V·s)". */ readonly says: string;
}

const RPM_PER_VOLT = requireUnit("rpm/V", "speedConstant").factor;

/** What one slip of units did to the number: the right value is the found one times `factor`. */
const SLIPS = [
  { factor: RPM_PER_VOLT, was: "the number was in rpm/V and was read in rad/(V·s)" },
  { factor: 1 / RPM_PER_VOLT, was: "the number was in rad/(V·s) and was read in rpm/V" },
  { factor: 60, was: "the number was in turns a second per volt and was read in rpm/V" },
  { factor: 1 / 60, was: "the number was in rpm/V and was read in turns a second per volt" },
  { factor: 2 * Math.PI, was: "the number was in turns a second per volt and was read in rad/(V·s)" },
  { factor: 1 / (2 * Math.PI), was: "the number was in rad/(V·s) and was read in turns a second per volt" },
] as const;

/** Readings that make an implausible speed constant a usual one, likeliest first; empty where it is usual as it is. */
export function speedConstantReadings(motor: MotorConstants): SpeedConstantReading[] {
  if (!looksSlipped(motor)) return [];
  return SLIPS.map(({ factor, was }) => ({ speedConstant: motor.speedConstant * factor, was }))
    .filter(({ speedConstant }) => !looksSlipped({ ...motor, speedConstant }))
    .map(({ speedConstant, was }) => ({
      speedConstant,
      says: `it is ${formatNumber(speedConstant / RPM_PER_VOLT)} rpm/V: ${was}`,
    }));
}

function looksSlipped(motor: MotorConstants): boolean {
  return motorProblems(motor).some(({ code }) => code === "motor.speed-constant-unit");
}

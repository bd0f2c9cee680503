import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { CalibrationMethod, InstrumentRole } from "../model/instrument.ts";
import { STANDARD_GRAVITY } from "../quantity/constants.ts";
import { InputProblem } from "../quantity/problem.ts";
import { findUnit, requireUnit } from "../quantity/unit.ts";
import type { FactorPart } from "./calibration.ts";
import { armPart, rectangular } from "./factorParts.ts";

type DeadWeights = Extract<CalibrationMethod, { kind: "deadWeights" }>;

/**
 * Half of the way from the gravity at 30° to that at 60° of latitude, relative: 9.7932 and 9.8192 m/s².
 * Source   normal gravity of the Geodetic Reference System 1980, Moritz, Bulletin géodésique 54 (1980) 395 (from memory).
 */
const GRAVITY_HALF_WIDTH = 0.0013;

/** SI of the channel by one unit of dead weight, and the doubts that all weights share. Throws InputProblem `calibration.*`. */
export function deadWeightScale(method: DeadWeights, role: InstrumentRole) {
  const { appliedUnit, appliedTolerance, gravity, lever, arm } = method;
  const parts: FactorPart[] = [{ name: "tolerance of the weights", relative: rectangular(appliedTolerance) }];
  const direct = role === "torque" ? findUnit(appliedUnit, "torque") : undefined;
  if (direct) return { perApplied: direct.factor, parts };
  const mass = findUnit(appliedUnit, "mass");
  let perApplied = mass ? mass.factor * gravity : requireUnit(appliedUnit, "massAsForce", "unit of the weights").factor;
  if (mass && gravity === STANDARD_GRAVITY) {
    parts.push({ name: "gravity, taken as the standard value", relative: rectangular(GRAVITY_HALF_WIDTH) });
  }
  if (role === "torque") {
    if (!arm) throw noArm(appliedUnit);
    perApplied *= arm.length;
    parts.push(armPart("arm of the weights", arm));
  } else if (lever) {
    perApplied *= lever.scaleArm.length / lever.propellerArm.length;
    parts.push(armPart("arm of the scale", lever.scaleArm), armPart("arm of the propeller", lever.propellerArm));
  }
  return { perApplied, parts };
}

/** SI by one unit of the reading where it is a unit of the channel; null for counts, millivolts and the like. */
export function readingFactorOf(readingUnit: string, role: InstrumentRole): number | null {
  const unit = readingUnit === "" ? undefined : findUnit(readingUnit, ROLE_DIMENSIONS[role]);
  return unit && !unit.electrical ? unit.factor : null;
}

function noArm(appliedUnit: string): InputProblem {
  return new InputProblem({
    code: "calibration.no-arm",
    where: "arm of the weights",
    found: `weights in ${appliedUnit} make a torque only on an arm, and none is given`,
    needed: "the distance of the string from the shaft, with its tolerance",
    mend: "For example 100 mm ± 0.5 mm",
  });
}

import { ROLE_DIMENSIONS } from "../log/roleUnits.ts";
import type { CalibrationMethod, Instrument } from "../model/instrument.ts";
import { InputProblem } from "../quantity/problem.ts";
import { requireUnit } from "../quantity/unit.ts";
import { deadWeightScale, readingFactorOf } from "./appliedUnit.ts";
import type { Calibration, FactorPart } from "./calibration.ts";
import { armPart, present, rectangular, together } from "./factorParts.ts";
import { lineCalibration } from "./lineCalibration.ts";

type Method<K extends CalibrationMethod["kind"]> = Extract<CalibrationMethod, { kind: K }>;

/**
 * Factor, zero and doubt of an instrument, from its raw data.
 *
 *   lever        T = F × l_scale / l_propeller             arms from their tolerances, rectangular
 *   torque arm   Q = F × l
 *   divider      U = U_tap × (R_1 + R_2) / R_2             u(k)/k = (k - 1)/k × sqrt(2) × tolerance/√3
 *   markers      n = pulses / pulses per turn
 *
 * Source   JCGM 100:2008 (GUM), 4.3.7 and 5.1; moments and Ohm's law.
 * Throws   InputProblem `calibration.*` or `quantity.*` where the raw data can not give a calibration.
 */
export function calibrationOf({ role, calibration: method, resolution }: Instrument): Calibration {
  switch (method.kind) {
    case "deadWeights": {
      const { perApplied, parts } = deadWeightScale(method, role);
      const readingFactor = readingFactorOf(method.readingUnit, role);
      return lineCalibration({ ...method, perApplied, shared: parts, readingFactor, resolution });
    }
    case "comparison": {
      const unit = requireUnit(method.appliedUnit, ROLE_DIMENSIONS[role], "unit of the reference meter");
      const readingFactor = readingFactorOf(method.readingUnit, role);
      const shared = [meterPart(method.appliedTolerance)];
      return lineCalibration({ ...method, perApplied: unit.factor, shared, readingFactor, resolution });
    }
    case "lever":
      return ofFactor(method.scaleArm.length / method.propellerArm.length, 1, leverParts(method));
    case "torqueArm": {
      const force = requireUnit(method.readingUnit, "massAsForce", "unit of the force");
      const parts = [armPart("arm of the scale", method.arm), scalePart(method.readingTolerance)];
      return ofFactor(force.factor * method.arm.length, null, parts);
    }
    case "reference":
      return ofReference(method, role);
    case "divider":
      return ofDivider(method);
    case "markers":
      return ofFactor(1 / method.pulsesPerTurn, 1, []);
  }
}

function leverParts({ scaleArm, propellerArm, readingTolerance }: Method<"lever">): FactorPart[] {
  return [
    armPart("arm of the scale", scaleArm),
    armPart("arm of the propeller", propellerArm),
    scalePart(readingTolerance),
  ];
}

const scalePart = (tolerance: number) => ({ name: "tolerance of the scale", relative: rectangular(tolerance) });
const meterPart = (tolerance: number) => ({
  name: "tolerance of the reference meter",
  relative: rectangular(tolerance),
});

function ofReference(method: Method<"reference">, role: Instrument["role"]): Calibration {
  const { unit, applied, reading, appliedTolerance } = method;
  requireUnit(unit, ROLE_DIMENSIONS[role], "unit of the reference meter");
  if (applied === 0 || reading === 0 || !Number.isFinite(applied / reading)) {
    throw new InputProblem({
      code: "calibration.no-reference",
      where: "reference reading",
      found: `the meter read ${applied} ${unit} and the log ${reading} ${unit}`,
      needed: "two readings other than 0",
      mend: "Take both at the voltage or current that the runs reach",
    });
  }
  return ofFactor(applied / reading, 1, [meterPart(appliedTolerance)]);
}

function ofDivider({ upperResistance, lowerResistance, resistorTolerance }: Method<"divider">): Calibration {
  const k = (upperResistance + lowerResistance) / lowerResistance;
  const each = ((k - 1) / k) * rectangular(resistorTolerance);
  return ofFactor(k, 1, [
    { name: "tolerance of the upper resistor", relative: each },
    { name: "tolerance of the lower resistor", relative: each },
  ]);
}

/** A factor alone; the zero is that of the readings. */
function ofFactor(factor: number, readingFactor: number | null, causes: readonly FactorPart[]): Calibration {
  const scaleParts = present(causes);
  const relativeUncertainty = together(scaleParts);
  return {
    ...{ factor, offset: 0, readingFactor, lineUncertainty: 0, degreesOfFreedom: Infinity },
    ...{ scaleUncertainty: relativeUncertainty, relativeUncertainty, pivot: 0, levelUncertainty: 0 },
    ...{ zeroUncertainty: null, scaleParts, range: null, findings: null, resolution: 0 },
  };
}

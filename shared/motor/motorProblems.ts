import { formatNumber } from "../quantity/format.ts";
import { requireUnit } from "../quantity/unit.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { freeRunningCurrent, stallCurrent } from "./dcMotor.ts";
import type { MotorConstants } from "./motorConstants.ts";

/** rad/(V·s) of one rpm/V. */
const RPM_PER_VOLT = requireUnit("rpm/V", "speedConstant").factor;

/** Speed constants of small thruster motors, rad/(V·s): 95 to 4000 rpm/V. Common practice, no source. */
const USUAL_SPEED_CONSTANT = { low: 95 * RPM_PER_VOLT, high: 4000 * RPM_PER_VOLT };

/**
 * What looks wrong in the constants of a motor: a winding without resistance, a speed constant that looks like a unit
 * slip (factor 2π or 60), a no-load current that is not below the stall current at `voltage` (V, when known).
 * The motor can still be computed with; the warnings stand beside the result.
 */
export function motorProblems(motor: MotorConstants, voltage?: number): Warning[] {
  return [zeroResistance(motor), speedConstantSlip(motor), noLoadAboveStall(motor, voltage)].filter(
    (found) => found !== null,
  );
}

function zeroResistance({ resistance }: MotorConstants): Warning | null {
  if (resistance > 0) return null;
  return warning({
    code: "motor.zero-resistance",
    where: "motor resistance",
    found: `The winding resistance is ${formatNumber(resistance)} Ω`,
    needed: "some resistance: every winding has it, usually 0.02 to 1 Ω",
    mend: "Measure it between two terminals, or shaft power and speed come out too high",
  });
}

function speedConstantSlip({ speedConstant }: MotorConstants): Warning | null {
  const { low, high } = USUAL_SPEED_CONSTANT;
  if (speedConstant >= low && speedConstant <= high) return null;
  const meant =
    speedConstant > high
      ? `If ${formatNumber(speedConstant)} is in rpm/V, it is ${formatNumber(speedConstant * RPM_PER_VOLT)} rad/(V·s)`
      : `If it is in rev/s per volt, it is ${formatNumber(speedConstant * 60)} rpm/V`;
  return warning({
    code: "motor.speed-constant-unit",
    where: "motor speed constant",
    found: `K_v is ${formatNumber(speedConstant)} rad/(V·s), which is ${formatNumber(speedConstant / RPM_PER_VOLT)} rpm/V`,
    needed: `usually ${formatNumber(low / RPM_PER_VOLT)} to ${formatNumber(high / RPM_PER_VOLT)} rpm/V`,
    mend: meant,
  });
}

function noLoadAboveStall(motor: MotorConstants, voltage: number | undefined): Warning | null {
  if (voltage === undefined || !(voltage > 0) || !(motor.resistance > 0)) return null;
  const [free, stall] = [freeRunningCurrent({ motor, voltage }), stallCurrent({ motor, voltage })];
  if (free < stall) return null;
  return warning({
    code: "motor.no-load-above-stall",
    where: "motor no-load current",
    found: `At ${formatNumber(voltage)} V the no-load current is ${formatNumber(free)} A and the stall current ${formatNumber(stall)} A`,
    needed: "a no-load current far below the stall current, or the motor can not turn",
    mend: "Check the winding resistance (milliohm read as ohm?) and the no-load current",
  });
}

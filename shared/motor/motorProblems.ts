import { formatNumber } from "../quantity/format.ts";
import { requireUnit } from "../quantity/unit.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { freeRunningCurrent, type MotorConstants, stallCurrent } from "./motorConstants.ts";

/** rad/(V·s) of one rpm/V. */
const RPM_PER_VOLT = requireUnit("rpm/V", "speedConstant").factor;

/** Speed constants of small thruster motors, rad/(V·s): 95 to 4000 rpm/V. Common practice, no source. */
const USUAL_SPEED_CONSTANT = { low: 95 * RPM_PER_VOLT, high: 4000 * RPM_PER_VOLT };

/**
 * What looks wrong in the constants of a motor: a winding without resistance, a speed constant that looks like a unit
 * slip (factor 2π or 60), a no-load current that is not below the stall current at `voltage` (V, when known).
 * Each asks: it names what was read, what else may have been meant, and what either would mean for the motor.
 * The motor can still be computed with; the warnings stand beside the result.
 */
export function motorProblems(motor: MotorConstants, voltage?: number): Warning[] {
  const known = voltage !== undefined && voltage > 0 ? voltage : null;
  return [zeroResistance(motor), speedConstantSlip(motor, known), noLoadAboveStall(motor, known)].filter(
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

/** Ways in which one number comes to stand for another speed constant: how it is meant, and K_v in rad/(V·s) then. */
const READINGS: readonly { readonly meant: string; readonly read: (stated: number) => number }[] = [
  { meant: "is in rpm/V", read: (stated) => stated * RPM_PER_VOLT },
  { meant: "is in rev/s per volt", read: (stated) => stated * 2 * Math.PI },
  { meant: "is rpm taken as rev/s", read: (stated) => stated / 60 },
  { meant: "is rev/s taken as rpm", read: (stated) => stated * 60 },
  { meant: "is the torque constant K_t in N·m/A", read: (stated) => 1 / stated },
];

function isUsual(speedConstant: number): boolean {
  return speedConstant >= USUAL_SPEED_CONSTANT.low && speedConstant <= USUAL_SPEED_CONSTANT.high;
}

function speedConstantSlip({ speedConstant }: MotorConstants, voltage: number | null): Warning | null {
  if (isUsual(speedConstant)) return null;
  const { low, high } = USUAL_SPEED_CONSTANT;
  const others = READINGS.map(({ meant, read }) => ({ meant, K: read(speedConstant) })).filter(({ K }) => isUsual(K));
  const asked = others.map(({ meant, K }) => `If the number ${meant}, it is ${speedText(K, voltage)}`);
  return warning({
    code: "motor.speed-constant-unit",
    where: "motor speed constant",
    found: `K_v is ${formatNumber(speedConstant)} rad/(V·s), which is ${speedText(speedConstant, voltage)}`,
    needed: `usually ${formatNumber(low / RPM_PER_VOLT)} to ${formatNumber(high / RPM_PER_VOLT)} rpm/V`,
    mend: asked.length > 0 ? `Which is meant? ${asked.join(". ")}` : "Check the number and its unit",
  });
}

/** "477 rpm/V (7640 rpm without load at 16.0 V)" */
function speedText(speedConstant: number, voltage: number | null): string {
  const perVolt = speedConstant / RPM_PER_VOLT;
  const free =
    voltage === null ? "" : ` (${formatNumber(perVolt * voltage)} rpm without load at ${formatNumber(voltage)} V)`;
  return `${formatNumber(perVolt)} rpm/V${free}`;
}

function noLoadAboveStall(motor: MotorConstants, voltage: number | null): Warning | null {
  if (voltage === null || !(motor.resistance > 0)) return null;
  const [free, stall] = [freeRunningCurrent(motor, voltage), stallCurrent(motor, voltage)];
  if (free < stall) return null;
  return warning({
    code: "motor.no-load-above-stall",
    where: "motor no-load current",
    found: `At ${formatNumber(voltage)} V the no-load current is ${formatNumber(free)} A and the stall current ${formatNumber(stall)} A`,
    needed: "a no-load current far below the stall current, or the motor can not turn",
    mend: `Which is wrong? If the resistance is in milliohm, it is ${formatNumber(motor.resistance / 1000)} Ω and the stall current ${formatNumber(1000 * stall)} A. If the no-load current is in milliampere, it is ${formatNumber(motor.noLoadCurrent / 1000)} A`,
  });
}

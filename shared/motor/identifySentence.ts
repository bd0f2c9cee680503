import type { MotorIdentification, MotorReading } from "../model/motorIdentification.ts";
import { formatQuantity, formatUncertain } from "../quantity/format.ts";
import { requireUnit } from "../quantity/unit.ts";

export const RPM_PER_VOLT = { symbol: "rpm/V", factor: requireUnit("rpm/V", "speedConstant").factor };
export const MILLIOHM = { symbol: "mΩ", factor: 1e-3 };
const AMPERE = { symbol: "A", factor: 1 };
const RPM = { symbol: "rpm", factor: 1 / 60 };
const WATT = { symbol: "W", factor: 1 };

/** "Kv 447 ± 4 rpm/V, resistance 131 ± 6 mΩ; the no-load current grows with speed, from 0.54 A at rest to 0.92 A at 4480 rpm." */
export function identificationSentence(
  { constants, wetLoss }: Pick<MotorIdentification, "constants" | "wetLoss">,
  points: readonly MotorReading[],
): string {
  if (!constants) return "";
  const electrical = `Kv ${formatUncertain(constants.speedConstant, RPM_PER_VOLT)}, resistance ${formatUncertain(constants.resistance, MILLIOHM)}`;
  const loss = lossWords(constants, points);
  const wet = wetLoss
    ? ` Flooded, the rotor takes ${formatUncertain(wetLoss.power, WATT)} more at ${formatQuantity(wetLoss.rotationRate, RPM)}, with torque growing as speed to the power ${formatUncertain(wetLoss.exponent)}.`
    : "";
  return `${electrical}; ${loss}.${wet}`;
}

function lossWords(
  { noLoadCurrent, noLoadCurrentSlope }: NonNullable<MotorIdentification["constants"]>,
  points: readonly MotorReading[],
): string {
  if (!noLoadCurrent || !noLoadCurrentSlope) return "the no-load loss can not be told from these runs";
  const rest = formatUncertain(noLoadCurrent, AMPERE);
  if (noLoadCurrentSlope.standardUncertainty === 0 && noLoadCurrentSlope.value === 0)
    return `the no-load current is ${rest}, taken as the same at all speeds`;
  const fastest = Math.max(...points.map(({ rotationRate }) => rotationRate));
  const top = noLoadCurrent.value + noLoadCurrentSlope.value * 2 * Math.PI * fastest;
  const clear = noLoadCurrentSlope.interval95[0] > 0;
  return `the no-load current ${clear ? "grows with speed" : "hardly changes with speed"}, from ${rest} at rest to ${formatQuantity(top, AMPERE)} at ${formatQuantity(fastest, RPM)}`;
}

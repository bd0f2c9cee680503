import { formatNumber, formatQuantity } from "../quantity/format.ts";

/** Share by which a number may pass the greatest that was measured: plateaus scatter by about as much. Common practice, no source. */
const ROOM = 0.02;

/** Whether a rotation rate or a power lies beyond the greatest that was measured, in the same unit. */
export function isBeyondMeasured(asked: number, greatest: number): boolean {
  return asked > (1 + ROOM) * greatest;
}

/** A propeller at a rotation rate, and the greatest rate that it was measured at, rev/s. */
export interface TurningBeyond {
  readonly name: string;
  readonly rotationRate: number;
  readonly measuredRate: number;
}

/**
 * Which of several propellers turn faster than they were measured, one sentence; empty where none does.
 *
 * @example extrapolationInWords([{ name: "a", rotationRate: 50, measuredRate: 40 }]) // Extrapolated: “a” turns at 3000 rpm, measured up to 2400 rpm.
 */
export function extrapolationInWords(turning: readonly TurningBeyond[]): string {
  const beyond = turning.filter(({ rotationRate, measuredRate }) => isBeyondMeasured(rotationRate, measuredRate));
  if (beyond.length === 0) return "";
  const told = beyond.map(
    ({ name, rotationRate, measuredRate }) =>
      `“${name}” turns at ${wholeRpm(rotationRate)}, measured up to ${wholeRpm(measuredRate)}`,
  );
  return `Extrapolated: ${told.join("; ")}.`;
}

const wholeRpm = (rate: number) => `${formatNumber(60 * rate, 4)}\u202frpm`;

/** "extrapolated, as no more than 60.1 W was measured"; empty for a shaft power (W) within what was measured, or where none was. */
export function powerExtrapolationInWords(power: number, greatest: number | null): string {
  if (greatest === null || !isBeyondMeasured(power, greatest)) return "";
  return `extrapolated, as no more than ${formatQuantity(greatest, { symbol: "W", factor: 1 })} at the shaft was measured`;
}

import type { Arm } from "../model/instrument.ts";
import type { Calibration, FactorPart } from "./calibration.ts";

/**
 * Standard uncertainty of a value that lies within ± `halfWidth`, anywhere in it with equal chance: halfWidth/√3.
 * Source JCGM 100:2008 (GUM), 4.3.7.
 */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Relative doubt of an arm from its tolerance. */
export function armPart(name: string, { length, tolerance }: Arm): FactorPart {
  return { name, relative: rectangular(tolerance / length) };
}

/** The causes that are there. */
export function present(parts: readonly FactorPart[]): FactorPart[] {
  return parts.filter(({ relative }) => relative > 0);
}

/** Everything that makes the factor doubtful, scatter about the line included, greatest first. */
export function factorParts({ lineUncertainty, scaleParts }: Calibration): FactorPart[] {
  const line = { name: "scatter about the straight line", relative: lineUncertainty };
  return present([line, ...scaleParts]).sort((a, b) => b.relative - a.relative);
}

/** Relative standard uncertainty of the parts together, 1: independent, so in squares (JCGM 100:2008, eq. 10). */
export function together(parts: readonly FactorPart[]): number {
  return Math.hypot(...parts.map(({ relative }) => relative));
}

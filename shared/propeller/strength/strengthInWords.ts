import type { BladeStrength } from "../../model/bladeStrength.ts";
import { formatNumber, formatQuantity } from "../../quantity/format.ts";
import type { StrengthRequest } from "./bladeStrength.ts";

/** What to mind before a blade is spun. */
export const STRENGTH_CAUTIONS = [
  "A thrown blade is a projectile: put a guard around the propeller plane, stand out of it, wear eye protection, and raise the speed in steps.",
  "The numbers hold for a sound, solid print. Voids, poor layer bonding, nicks, stones, weed and sunlight weaken a blade in ways no formula here knows; throw a blade away at the first crack or whitening.",
  "Strength, water uptake and temperature limits are for the material's data sheet or your own pull tests to say; local rules for machinery and waterways come before this page.",
] as const;

const MM = { symbol: "mm", factor: 1e-3 };
const MPA = { symbol: "MPa", factor: 1e6 };

/** Where the blade would break first, at how many times this load, and how far the tip bends. */
export function strengthSentence(
  { critical, strength, tipDeflection }: Pick<BladeStrength, "critical" | "strength" | "tipDeflection">,
  { geometry, material, wantedSafety }: StrengthRequest,
): string {
  const { safetyFactor, fatigueSafetyFactor } = critical;
  if (safetyFactor === null || fatigueSafetyFactor === null) return "There is no load on the blade.";
  const part = formatNumber((2 * critical.radius) / geometry.diameter, 2);
  const isPressed = critical.greatestCompression > critical.greatestTension;
  const greater = Math.max(critical.greatestTension, critical.greatestCompression);
  const stress = `${formatQuantity(greater, MPA)} of ${isPressed ? "compression" : "tension"}`;
  const verdict = fatigueSafetyFactor >= wantedSafety ? "enough" : "not enough";
  return [
    `The blade is stressed most at ${part} of the radius (${formatQuantity(critical.radius, MM)}): ${stress}, against ${formatQuantity(strength, MPA)} that ${material.name} can take along the blade.`,
    `Safety factor ${formatNumber(safetyFactor, 2)} for a single pull and ${formatNumber(fatigueSafetyFactor, 2)} for load repeated at blade rate: ${verdict} for the ${formatNumber(wantedSafety, 2)} wanted.`,
    `The tip bends ${formatQuantity(tipDeflection.total, MM, 2)}.`,
  ].join(" ");
}

import type { BladeStrength } from "../../model/bladeStrength.ts";
import { formatNumber, formatQuantity } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { StrengthRequest } from "./bladeStrength.ts";

/** A blade that bends by more than this part of its length changes its pitch, and small-slope theory ends. */
const LARGE_DEFLECTION = 0.1;
/** Skew from which twisting matters beside bending; common practice, no source. */
const LARGE_SKEW = (15 * Math.PI) / 180;
const MM = { symbol: "mm", factor: 1e-3 };
const MPA = { symbol: "MPa", factor: 1e6 };

type Solved = Pick<BladeStrength, "critical" | "tipDeflection" | "strength" | "sections">;

/** What the strength of a blade must be read with. */
export function strengthWarnings(result: Solved, request: StrengthRequest): Warning[] {
  return [tooWeak(result, request), tooSoft(result, request), skewed(request), unknownTip(result)].filter(
    (one) => one !== null,
  );
}

function tooWeak({ critical, strength }: Solved, { wantedSafety }: StrengthRequest): Warning | null {
  const { safetyFactor, fatigueSafetyFactor } = critical;
  if (safetyFactor === null || fatigueSafetyFactor === null || fatigueSafetyFactor >= wantedSafety) return null;
  const outright = safetyFactor < wantedSafety;
  const found = outright
    ? `A single pull breaks the blade at ${formatNumber(safetyFactor, 2)} times this load (strength ${formatQuantity(strength, MPA)})`
    : `Load repeated at blade rate leaves a safety factor of ${formatNumber(fatigueSafetyFactor, 2)}`;
  return warning({
    code: "propeller.blade-overstressed",
    where: `section at ${formatQuantity(critical.radius, MM)}`,
    found,
    needed: `at least ${formatNumber(wantedSafety, 2)}`,
    mend: "Thicken the root, lower the rotation rate, or choose a stronger material or layer direction, and do not spin it before",
  });
}

function tooSoft({ tipDeflection: { total } }: Solved, { geometry }: StrengthRequest): Warning | null {
  const span = (geometry.diameter - geometry.hubDiameter) / 2;
  if (total <= LARGE_DEFLECTION * span) return null;
  return warning({
    code: "propeller.blade-bends-far",
    where: "tip",
    found: `The tip bends ${formatQuantity(total, MM)}, ${formatNumber((100 * total) / span, 2)} % of the blade's length`,
    needed: `less than ${100 * LARGE_DEFLECTION} % for these formulas and for the pitch to stay what it is`,
    mend: "Take the deflection as a sign of a blade too soft, not as a measure",
  });
}

function skewed({ geometry: { stations } }: StrengthRequest): Warning | null {
  const skews = stations.map(({ skew }) => skew ?? 0);
  const range = Math.max(...skews) - Math.min(...skews);
  if (range <= LARGE_SKEW) return null;
  return warning({
    code: "propeller.blade-twists",
    where: "geometry.stations",
    found: `The blade is skewed by ${formatNumber((range * 180) / Math.PI, 2)}°, and twisting is not in these stresses`,
    needed: "less than 15° for the beam alone",
    mend: "Leave more in hand",
  });
}

function unknownTip({ critical, sections }: Solved): Warning | null {
  if (critical.radius < sections.at(-1)!.radius) return null;
  return warning({
    code: "propeller.blade-tip-critical",
    where: `section at ${formatQuantity(critical.radius, MM)}`,
    found: "The greatest stress stands at the outermost section that was computed",
    needed: "a tip that is not thinner than its load allows",
    mend: "Check thickness and chord of the last stations",
  });
}

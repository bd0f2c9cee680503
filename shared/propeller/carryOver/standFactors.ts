import type { CarryOverFactor, CarryOverRequest } from "../../model/carryOver.ts";
import { formatNumber, formatPercent } from "../../quantity/format.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import { thrustRatioNearSurface } from "../cavitation/ventilation.ts";
import { discArea } from "../coefficients.ts";
import { inducedVelocity } from "../momentum.ts";
import { bladeSection } from "./bladeSection.ts";
import { between, entry } from "./factor.ts";

/**
 * Fall of K_T and K_Q with J at rest, times the pitch ratio: -K'/K (P/D). B screws of three blades, area ratio 0.50 and
 * pitch ratio 0.6 to 1.4 give 0.55 to 0.68 and 0.60 to 0.62 between J = 0 and 0.1 or 0.2 (Oosterveld & van Oossanen
 * 1975).
 */
const FALL = { thrust: 0.67, torque: 0.61 } as const;

/** Pitch ratio of a propeller whose pitch is not stated. */
const USUAL_PITCH_RATIO = 0.8;

/** Part of the tank's section that the disc may take before a linear estimate of its return flow means nothing. */
const GREATEST_PART = 0.25;

/** What the tank and the surface of the stand took from the coefficients; open, deep water gives it back. */
export function standFactors(request: CarryOverRequest): CarryOverFactor[] {
  if (request.measured.fluid.kind === "air") return [];
  return [returnFlow(request), surface(request)].filter((factor) => factor !== null);
}

/**
 * The jet must come back round the propeller. At most the whole of it arrives as an inflow: J_r = (v/(n D)) A/(A_tank -
 * A), and the coefficients were measured that far from rest; at least none does. Common practice, no source: a bound of
 * the right size.
 */
function returnFlow(request: CarryOverRequest): CarryOverFactor | null {
  const { tankWidth, tankDepth, diameter, thrustCoefficient, advanceRatio } = request.measured;
  if (tankWidth === undefined || tankDepth === undefined || advanceRatio > 0) return null;
  const part = discArea(diameter) / (tankWidth * tankDepth);
  // In units of ρ, n and D the induced velocity is v/(n D).
  const v = inducedVelocity({ thrust: thrustCoefficient.value, discArea: discArea(1), density: 1, advanceSpeed: 0 });
  if (part > GREATEST_PART) throw tankTooSmall(part);
  const inflow = (v * part) / (1 - part);
  const pitchRatio = bladeSection(request)?.pitchRatio ?? USUAL_PITCH_RATIO;
  const most = (fall: number) => between(1, 1 / (1 - (fall * inflow) / pitchRatio));
  return entry(
    {
      cause: "returnFlow",
      actsOn: "coefficients",
      reason: `The disc is ${formatPercent(part)} of the tank's section; the jet comes back and may meet the propeller as an inflow of J = ${formatNumber(inflow, 2)} at most. The middle between none and all of it (common practice, no source).`,
    },
    most(FALL.thrust),
    most(FALL.torque),
  );
}

function tankTooSmall(part: number): OutOfDomain {
  return new OutOfDomain({
    code: "propeller.tank-too-small",
    where: "measured.tankWidth",
    found: `The disc takes ${formatPercent(part)} of the tank's section`,
    needed: `at most ${100 * GREATEST_PART} %`,
    mend: "Measure in more water; nothing can be carried over from so small a tank",
  });
}

/** Torque loses less than thrust near the surface, β^0.8: Minsaas, Faltinsen & Persson 1983, from memory. */
const TORQUE_EXPONENT = 0.8;

function surface({ measured }: CarryOverRequest): CarryOverFactor | null {
  const { shaftImmersion, diameter } = measured;
  if (shaftImmersion === undefined) return null;
  const beta = thrustRatioNearSurface(shaftImmersion / (diameter / 2));
  if (beta === 1) return null;
  return entry(
    {
      cause: "surface",
      actsOn: "coefficients",
      reason: `The shaft lay ${formatNumber(shaftImmersion / diameter, 2)} diameters deep, where ${formatPercent(1 - beta)} of the thrust may be lost to waves and tips out of the water (Minsaas, Faltinsen & Persson 1983, from memory). The middle between none and all of it.`,
    },
    between(1, 1 / beta),
    between(1, beta ** -TORQUE_EXPONENT),
  );
}

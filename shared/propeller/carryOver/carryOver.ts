import { fluidProperties } from "../../fluid/fluidProperties.ts";
import { fluidWarnings } from "../../fluid/fluidWarnings.ts";
import type { CarryOver, CarryOverFactor, CarryOverRequest } from "../../model/carryOver.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../coefficients.ts";
import { bladeSection } from "./bladeSection.ts";
import { forceFactors } from "./forceFactors.ts";
import { nozzleFactor } from "./nozzleFactor.ts";
import { reynoldsFactor } from "./reynoldsFactor.ts";
import { standFactors } from "./standFactors.ts";

/**
 * Coefficients, thrust and power in another fluid, at another speed or size, from those measured on a stand: air to
 * water, fresh to sea, tank to open water, one diameter to another. Every factor stands with its size, its doubt and
 * its reason.
 *
 *   K_T = K_T,measured Π f_i,   T = K_T ρ n² D⁴;   (u/T)² = (u/K_T)²_measured + Σ u_i²
 *
 * Source   same coefficients at the same advance ratio: similarity, e.g. Carlton, Marine Propellers and Propulsion, ch.
 *          6; each factor names its own.
 * Assumes  the propeller is the same, or an exact copy to scale, with the same finish; independent factors; no
 *          cavitation and no air drawn in at the target: `cavitation`.
 * Range    as each factor.
 * Throws   OutOfDomain outside the range of a fluid or of a formula.
 */
export function carryOver(request: CarryOverRequest): CarryOver {
  const { measured, target } = request;
  const { reynolds, factor } = reynoldsFactor(request);
  const nozzle = nozzleFactor(request);
  const onCoefficients = [factor, ...standFactors(request), ...(nozzle === null ? [] : [nozzle])];
  const onForces = forceFactors(request);
  const K_T = product(measured.thrustCoefficient, onCoefficients, "thrust");
  const K_Q = product(measured.torqueCoefficient, onCoefficients, "torque");
  const { density: rho } = fluidProperties(target.fluid);
  const { rotationRate: n, diameter: D } = target;
  // In the same fluid the error of its density is in the coefficient too, and falls out.
  const densityDoubt = onForces.find(({ cause }) => cause === "density")?.thrustUncertainty ?? 0;
  const thrust = times(K_T, rho * n ** 2 * D ** 4, densityDoubt);
  const torque = times(K_Q, rho * n ** 2 * D ** 5, densityDoubt);
  const power = (rho * n ** 3 * D ** 5) / TORQUE_OVER_POWER_COEFFICIENT;
  return {
    factors: [...onForces, ...onCoefficients],
    thrustCoefficient: K_T,
    torqueCoefficient: K_Q,
    ...{ reynolds, thrust, torque, shaftPower: times(K_Q, power, densityDoubt) },
    warnings: [
      ...fluidWarnings(measured.fluid, "measured.fluid"),
      ...fluidWarnings(target.fluid, "target.fluid"),
      ...unstated(request),
    ],
  };
}

function product(
  { value, standardUncertainty }: { readonly value: number; readonly standardUncertainty: number },
  factors: readonly CarryOverFactor[],
  of: "thrust" | "torque",
): Uncertain {
  const factor = factors.reduce((all, one) => all * one[of], 1);
  const doubts = factors.map((one) => one[`${of}Uncertainty`]);
  return uncertain(value * factor, value * factor * Math.hypot(standardUncertainty / value, ...doubts));
}

/** `coefficient` times an exact number and a density of relative doubt `u`. */
function times({ value, standardUncertainty }: Uncertain, factor: number, u: number): Uncertain {
  return uncertain(value * factor, factor * Math.hypot(standardUncertainty, value * u));
}

function unstated(request: CarryOverRequest): Warning[] {
  const { measured } = request;
  const found: Warning[] = [];
  if (bladeSection(request) === undefined) {
    found.push(
      warning({
        code: "propeller.blade-not-stated",
        where: "blade",
        found:
          "Chord, pitch and number of blades are not stated, so that the effect of the Reynolds number is a wide range",
        needed: "the propeller's blades, pitch ratio and chord at 0.7 of the radius, or its blade shape",
        mend: "State them with the propeller",
      }),
    );
  }
  const isTankKnown = measured.tankWidth !== undefined && measured.tankDepth !== undefined;
  if (measured.fluid.kind !== "air" && !isTankKnown) {
    found.push(
      warning({
        code: "propeller.tank-not-stated",
        where: "measured.tankWidth",
        found:
          "The size of the tank is not stated, so that nothing is allowed for water that comes back to the propeller",
        needed: "width and depth of the water",
        mend: "State them with the stand; in a small tank some percent of the thrust can hide there",
      }),
    );
  }
  return found;
}

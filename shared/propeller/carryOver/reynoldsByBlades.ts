import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { CarryOverRequest, CarryOverShape } from "../../model/carryOver.ts";
import { solvedBlade } from "../blade/bladeElements.ts";
import { bladeShape } from "../blade/bladeShape.ts";
import { checkedGeometry } from "../blade/checkedGeometry.ts";
import { scaledGeometry } from "../blade/scaledGeometry.ts";

/** Factors on K_T and K_Q. */
export interface ReynoldsRoute {
  readonly thrust: number;
  readonly torque: number;
}

type Side = CarryOverRequest["measured"] | CarryOverRequest["target"];

/**
 * What blade elements of the propeller's own blades make of the change of the Reynolds number: K_T and K_Q at the target
 * over those on the stand, at the same advance ratio and with the same roughness.
 *
 * Source   `bladeElements`; how its trend with the Reynolds number stands to measurements: `modelEvidence`.
 * Returns  null where blade elements have no solution, or give no thrust or torque, on one of the sides.
 * Throws   InputProblem as `checkedGeometry`.
 */
export function reynoldsByBlades({ measured, target, shape }: CarryOverRequest): ReynoldsRoute | null {
  if (shape === undefined) return null;
  const geometry = checkedGeometry(shape.geometry);
  const before = coefficientsOn(measured, { ...shape, geometry }, measured.advanceRatio);
  const after = coefficientsOn(target, { ...shape, geometry }, measured.advanceRatio);
  if (before === null || after === null) return null;
  return { thrust: after.thrust / before.thrust, torque: after.torque / before.torque };
}

function coefficientsOn(
  { fluid, rotationRate, diameter }: Side,
  { geometry, surface }: CarryOverShape,
  advanceRatio: number,
): ReynoldsRoute | null {
  const solved = solvedBlade(bladeShape(scaledGeometry(geometry, diameter)), {
    ...{ surface, rotationRate },
    fluid: fluidProperties(fluid),
    advanceSpeed: advanceRatio * rotationRate * diameter,
  });
  if (solved.state === "failed") return null;
  const { thrustCoefficient: thrust, torqueCoefficient: torque } = solved;
  return thrust > 0 && torque > 0 ? { thrust, torque } : null;
}

import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { bladeElements } from "../blade/bladeElements.ts";

export interface RespondingBlade {
  readonly geometry: BladeGeometry;
  readonly fluid: FluidProperties;
  /** n, rev/s. */ readonly rotationRate: number;
  /** J of the points, at least one. */ readonly advanceRatios: readonly number[];
}

/** What blades with a given surface do. */
export interface BladeAnswer {
  /** One for each advance ratio. */
  readonly points: readonly { readonly thrustCoefficient: number; readonly torqueCoefficient: number }[];
  /** C_D of the section at 0.7 of the radius at the first advance ratio. */ readonly sectionDrag: number;
  /** Its Reynolds number. */ readonly reynolds: number;
}

/** K_T and K_Q that a surface gives; null where the blade elements have no solution. */
export type BladeResponse = (surface: BladeSurface) => BladeAnswer | null;

/** How the coefficients of a blade follow from its surface, by blade elements. */
export function bladeResponse({ geometry, fluid, rotationRate, advanceRatios }: RespondingBlade): BladeResponse {
  const speedOfRatio = rotationRate * geometry.diameter;
  return (surface) => {
    const solved = advanceRatios.map((J) =>
      bladeElements({ geometry, surface, fluid, rotationRate, advanceSpeed: J * speedOfRatio }),
    );
    const points = solved.flatMap((one) => (one.state === "solved" ? [one] : []));
    const first = points[0];
    if (first === undefined || points.length < solved.length) return null;
    const radius = 0.35 * geometry.diameter;
    const section = first.elements.reduce((near, element) =>
      Math.abs(element.radius - radius) < Math.abs(near.radius - radius) ? element : near,
    );
    return { points, sectionDrag: section.dragCoefficient, reynolds: section.reynolds };
  };
}

import type { BladePower } from "../../model/bladeElements.ts";
import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { solvedBlade } from "../blade/bladeElements.ts";
import { bladeShape } from "../blade/bladeShape.ts";
import { checkedGeometry } from "../blade/checkedGeometry.ts";
import type { SeriesTie } from "./seriesTie.ts";

export interface BladeToRun {
  readonly geometry: BladeGeometry;
  /** Factors on the coefficients that blade elements give. */ readonly tie: SeriesTie;
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
  /** Where the shaft power goes at the first advance ratio, W. */ readonly power: BladePower;
}

/** K_T and K_Q that a surface gives; null where the blade elements have no solution. */
export type BladeResponse = (surface: BladeSurface) => BladeAnswer | null;

/** The section at 0.7 of the tip radius. */
export interface MidSection {
  readonly chord: number;
  readonly thicknessRatio: number;
}

/** How the coefficients of a blade follow from its surface, by blade elements. */
export function bladeResponse({ geometry, tie, fluid, rotationRate, advanceRatios }: BladeToRun): {
  readonly response: BladeResponse;
  readonly section: MidSection;
} {
  const shape = bladeShape(checkedGeometry(geometry));
  const middle = nearestTo(0.35 * geometry.diameter, shape.pieces);
  const response: BladeResponse = (surface) => {
    const solved = advanceRatios.flatMap((J) => {
      const advanceSpeed = J * rotationRate * geometry.diameter;
      const one = solvedBlade(shape, { surface, fluid, rotationRate, advanceSpeed });
      return one.state === "solved" ? [one] : [];
    });
    const first = solved[0];
    if (first === undefined || solved.length < advanceRatios.length) return null;
    const { dragCoefficient, reynolds } = nearestTo(middle.radius, first.elements);
    const points = solved.map(({ thrustCoefficient, torqueCoefficient }) => ({
      thrustCoefficient: tie.thrust * thrustCoefficient,
      torqueCoefficient: tie.torque * torqueCoefficient,
    }));
    return { points, sectionDrag: dragCoefficient, reynolds, power: first.power };
  };
  return { response, section: middle };
}

function nearestTo<T extends { readonly radius: number }>(radius: number, pieces: readonly T[]): T {
  return pieces.reduce((near, piece) =>
    Math.abs(piece.radius - radius) < Math.abs(near.radius - radius) ? piece : near,
  );
}

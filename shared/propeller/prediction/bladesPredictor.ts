import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import type { BladeSurface } from "../../model/surface.ts";
import { solvedBlade } from "../blade/bladeElements.ts";
import { bladeShape } from "../blade/bladeShape.ts";
import { breadthWarnings } from "../blade/breadthWarnings.ts";
import { checkedGeometry } from "../blade/checkedGeometry.ts";
import type { Predictor } from "./predictor.ts";

interface DescribedBlade {
  readonly geometry: BladeGeometry;
  readonly surface: BladeSurface;
  readonly fluid: FluidProperties;
}

/**
 * Blade elements of a described propeller in a fluid; K_T and K_Q follow the Reynolds number of each rotation rate.
 *
 * Throws   what `checkedGeometry` throws for blades that can not be.
 */
export function bladesPredictor({ geometry, surface, fluid }: DescribedBlade): Predictor {
  const shape = bladeShape(checkedGeometry(geometry));
  // What holds at any rotation rate and speed; the rest stands with each solution.
  const warnings = [...shape.warnings, ...breadthWarnings(shape)];
  const always = new Set(warnings.map(({ code }) => code));
  return {
    diameter: geometry.diameter,
    warnings,
    at: ({ rotationRate, advanceSpeed }) => {
      if (rotationRate === 0) return { state: "unknown", reason: "The propeller does not turn." };
      const solved = solvedBlade(shape, { surface, fluid, rotationRate, advanceSpeed });
      if (solved.state === "failed") return { state: "unknown", reason: solved.reason };
      const { thrustCoefficient, torqueCoefficient } = solved;
      const own = solved.warnings.filter(({ code }) => !always.has(code));
      return { state: "known", thrustCoefficient, torqueCoefficient, warnings: own };
    },
  };
}

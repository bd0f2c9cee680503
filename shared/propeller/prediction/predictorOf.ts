import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { FluidProperties } from "../../model/fluid.ts";
import type { PredictionSource } from "../../model/prediction.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { bladesPredictor } from "./bladesPredictor.ts";
import type { Predictor } from "./predictor.ts";
import { seriesPredictor } from "./seriesPredictor.ts";

interface Surroundings {
  /** Blade shape of the propeller named by the source, where it has one. */
  readonly geometry?: BladeGeometry | undefined;
  readonly fluid: FluidProperties;
}

/**
 * What computes the coefficients of a prediction.
 *
 * Throws   InputProblem `propeller.no-blade-shape` for blade elements of a propeller whose blades are not described;
 *          OutOfDomain where series or geometry can not be used.
 */
export function predictorOf(
  source: Exclude<PredictionSource, { kind: "staticMerit" }>,
  { geometry, fluid }: Surroundings,
): Predictor {
  if (source.kind === "series") return seriesPredictor(source.series, source.diameter);
  if (geometry === undefined)
    throw new InputProblem({
      code: "propeller.no-blade-shape",
      where: "geometry",
      found: "The propeller has no blade shape, so blade elements have nothing to work on",
      needed: "chord, pitch, thickness and camber at some radii",
      mend: "Add the blade shape to the propeller on the Parts screen, typed, pasted or generated",
    });
  return bladesPredictor({ geometry, surface: source.surface, fluid });
}

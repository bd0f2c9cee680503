import type { BladeStrengthAnswer, BladeStrengthRequest } from "../../model/bladeStrength.ts";
import { finiteResult } from "../../quantity/finiteResult.ts";
import { bladeElements } from "../blade/bladeElements.ts";
import type { InFluid } from "../inFluid.ts";
import { bladeStrength } from "./bladeStrength.ts";

/**
 * Strength of one blade under the load that blade elements predict for its running.
 *
 * Source   `bladeElements`, `bladeStrength`.
 * Throws   as these two.
 */
export function predictedStrength(request: InFluid<BladeStrengthRequest>): BladeStrengthAnswer {
  const { geometry, surface, fluid, rotationRate, advanceSpeed } = request;
  const solved = bladeElements({ geometry, surface, fluid, rotationRate, advanceSpeed });
  if (solved.state === "failed") {
    return { state: "failed", reason: `Blade elements give no load: ${solved.reason}`, warnings: [] };
  }
  const strength = bladeStrength({ ...request, elements: solved.elements });
  return finiteResult({ ...strength, warnings: [...solved.warnings, ...strength.warnings] });
}

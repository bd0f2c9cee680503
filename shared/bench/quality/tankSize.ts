import type { QualityCheck } from "../../model/quality.ts";
import { discArea } from "../../propeller/coefficients.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { RunFacts } from "../runFacts.ts";
import { flagged, passed, unjudged } from "./verdict.ts";

/** Cross-section of the water over disc area, and length over diameter. Common practice, no source. */
const LEAST_AREA = 50;
const LEAST_LENGTH = 20;

const SUBJECT = {
  code: "bench.tank-size",
  name: "Size of the tank",
  limit: `water at least ${LEAST_AREA} disc areas wide and deep, and ${LEAST_LENGTH} diameters long (common practice)`,
};

/** Is there enough water round the disc that the stream does not come straight back? */
export function tankSize({ recipe, propeller }: Pick<RunFacts, "recipe" | "propeller">): QualityCheck {
  if (recipe.fluid.kind === "air") return passed(SUBJECT, null, "The run was in air: there is no tank.");
  const { tankLength, tankWidth, tankDepth } = recipe.stand ?? {};
  const areas = tankWidth && tankDepth ? (tankWidth * tankDepth) / discArea(propeller.diameter) : null;
  const lengths = tankLength ? tankLength / propeller.diameter : null;
  const tooNarrow = areas !== null && areas < LEAST_AREA;
  const tooShort = lengths !== null && lengths < LEAST_LENGTH;
  if (!tooNarrow && !tooShort && (areas === null || lengths === null)) {
    return unjudged(
      SUBJECT,
      "The size of the tank is not stated.",
      "State length, width and water depth with the data of the stand; for a pond or pool, its nearest walls.",
    );
  }
  const text = [
    ...(areas === null ? [] : [`${formatNumber(areas, 2)} disc areas`]),
    ...(lengths === null ? [] : [`${formatNumber(lengths, 2)} diameters long`]),
  ].join(", ");
  const measured = { value: areas ?? lengths!, unit: "1", text };
  if (!tooNarrow && !tooShort) return passed(SUBJECT, measured, `The tank is ${text}.`);
  return flagged(SUBJECT, {
    measured,
    sentence: `The tank is ${text}: the stream comes back to the propeller, which then pushes less than in open water.`,
    mend: "Measure in larger water, aim the stream along the greatest length, and keep each step short with a pause between.",
  });
}

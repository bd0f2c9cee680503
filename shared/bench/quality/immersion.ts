import type { QualityCheck } from "../../model/quality.ts";
import { formatNumber } from "../../quantity/format.ts";
import type { RunFacts } from "../runFacts.ts";
import { flagged, passed, unjudged } from "./verdict.ts";

/** Shaft depth over diameter. ITTC 7.5-02-03-02.1, open water test (from memory). */
const LEAST_IMMERSION = 1.5;

const SUBJECT = {
  code: "bench.immersion",
  name: "Immersion",
  limit: `shaft at least ${LEAST_IMMERSION} diameters under the surface (ITTC 7.5-02-03-02.1)`,
};

/** Is the propeller deep enough that the surface does not take part? */
export function immersion({ recipe, propeller }: Pick<RunFacts, "recipe" | "propeller">): QualityCheck {
  if (recipe.fluid.kind === "air") return passed(SUBJECT, null, "The run was in air: there is no surface.");
  const depth = recipe.stand?.shaftImmersion;
  if (depth === undefined) {
    return unjudged(
      SUBJECT,
      "How deep the shaft lay is not stated.",
      "Measure from the surface to the middle of the shaft and state it with the data of the stand.",
    );
  }
  const ratio = depth / propeller.diameter;
  const measured = { value: ratio, unit: "1", text: `${formatNumber(ratio, 2)} diameters` };
  const where = `The shaft lay ${formatNumber(depth * 1000)} mm deep, ${measured.text}.`;
  if (ratio >= LEAST_IMMERSION) return passed(SUBJECT, measured, where);
  return flagged(SUBJECT, {
    measured,
    sentence: `${where} So near the surface a propeller makes waves and draws air.`,
    mend: `Lower it to ${formatNumber(LEAST_IMMERSION * propeller.diameter * 1000)} mm or more.`,
  });
}

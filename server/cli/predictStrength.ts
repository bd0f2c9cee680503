import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import type { BladeElementsRequest } from "../../shared/model/bladeElements.ts";
import { type BladeStrengthAnswer, BladeStrengthRequest } from "../../shared/model/bladeStrength.ts";
import { predictedStrength } from "../../shared/propeller/strength/predictedStrength.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Options, Words } from "./options.ts";

/** Options of `predict` that ask for the strength of a blade. */
export const STRENGTH_OPTIONS: Options = {
  strength: {
    value: "MATERIAL",
    text: 'with --geometry: stress and safety factor of the blade in a printed material, e.g. "nylon 12"',
  },
  "across-layers": { text: "with --strength: the layers are stacked along the blade" },
};

/** Stress, safety factor and deflection at the first of the asked advance speeds. */
export function runStrength(words: Words, { geometry, surface, fluid, points }: BladeElementsRequest): number {
  const { rotationRate, advanceSpeed } = points[0]!;
  const layerAngle = words.has("across-layers") ? Math.PI / 2 : 0;
  const material = { ...materialOf(words.text("strength")!), layerAngle };
  const asked = BladeStrengthRequest.parse({ geometry, surface, fluid, rotationRate, advanceSpeed, material });
  const answer = predictedStrength({ ...asked, fluid: fluidProperties(fluid) });
  process.stdout.write(words.has("json") ? `${JSON.stringify(answer, null, 2)}\n` : readable(answer, material.source));
  return answer.state === "failed" ? 1 : 0;
}

function materialOf(text: string) {
  const wanted = text.trim().toLowerCase();
  const found = PRINTED_MATERIALS.filter(({ name }) => name.includes(wanted));
  if (wanted !== "" && found.length === 1) return found[0]!;
  throw new InputProblem({
    code: "cli.material",
    where: "--strength",
    found: `"${text}" names ${found.length === 0 ? "no" : "more than one"} printed material known here`,
    needed: `one of ${PRINTED_MATERIALS.map(({ name }) => name).join("; ")}`,
    mend: "A part of the name is enough where it fits one only",
  });
}

function readable(answer: BladeStrengthAnswer, source: string): string {
  if (answer.state === "failed") return `${answer.reason}\n`;
  const notes = answer.warnings.map(({ message }) => `Note: ${message}`);
  const values = `Note: strength and stiffness of the material: ${source}.`;
  return [answer.sentence, "", ...answer.cautions, "", ...notes, values, ""].join("\n");
}

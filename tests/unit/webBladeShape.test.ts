import { describe, expect, it } from "vitest";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import {
  madeOutline,
  OUTLINES,
  type OutlineName,
  outlineLike,
  shapeOf,
  shapePicture,
  shapeWords,
  tableText,
} from "../../web/views/parts/blade/bladeShapeModel.ts";
import { documentOf, draftOf } from "../../web/views/parts/partDraft.ts";
import { fieldsOf } from "../../web/views/parts/partFields.ts";

const PROPELLER = Propeller.parse({
  name: "Net propeller",
  diameter: 0.076,
  diameterUncertainty: 1e-4,
  bladeCount: 3,
  pitchRatio: 0.8,
  chordAt07: 0.0209,
});
const FRAME = { bladeCount: 3, diameter: 0.076, hubDiameter: 0.0152 };

describe("the blade shape of a propeller", () => {
  it("starts from an outline with its pitch and blade area", () => {
    // A_E/A_0 = (c/D) Z / 2.16: 0.275 × 3 / 2.16 = 0.38.
    expect(outlineLike(PROPELLER)).toMatchObject({ pitchRatio: 0.8, areaRatio: 0.38 });
  });

  it.each(Object.keys(OUTLINES) as OutlineName[])("is filled in as a table that can be read back: %s", (outline) => {
    const made = madeOutline({ ...outlineLike(PROPELLER), outline }, FRAME);
    if ("problem" in made) throw new Error(made.problem);
    const shape = shapeOf(made.text, FRAME);
    if ("problem" in shape) throw new Error(shape.problem);
    expect(tableText(shape.read.geometry)).toBe(made.text);
    const words = shapeWords(shape.read.geometry);
    expect(words).toMatch(/P\/D 0\.(80|79|81)/);
    expect(Number(/area ratio (0\.\d+)/.exec(words)![1])).toBeCloseTo(0.38, 1);
    expect(shapePicture(shape.read.geometry).series.map(({ id }) => id)).toEqual(["chord", "thickness", "pitch"]);
  });

  it.each([
    { text: "", says: "Paste or type" },
    {
      text: "radius (mm); chord (mm); pitch angle (deg); thickness (mm); camber (mm)\n8; 15; 45; 2; 0\n20; -3; 30; 2; 0\n38; 1; 20; 1; 0",
      says: "chord",
    },
    { text: "radius (mm); pitch angle (deg); thickness (mm); camber (mm)\n8; 45; 2; 0\n20; 30; 2; 0", says: "chord" },
  ])("names what is wrong: $says", ({ text, says }) => {
    const shape = shapeOf(text, FRAME);
    expect("problem" in shape && shape.problem).toContain(says);
  });

  it("stays with the propeller when its other fields are changed", () => {
    const made = madeOutline(outlineLike(PROPELLER), FRAME);
    const shape = shapeOf("text" in made ? made.text : "", FRAME);
    if ("problem" in shape) throw new Error(shape.problem);
    const shaped = { ...PROPELLER, geometry: shape.read.geometry };
    const fields = fieldsOf("propellers");
    expect(fields.some(({ key }) => key.startsWith("geometry"))).toBe(false);
    const draft = { ...draftOf(fields, shaped), note: "measured again" };
    expect(documentOf<"propellers">(fields, draft, shaped)).toMatchObject({
      note: "measured again",
      geometry: shaped.geometry,
    });
  });
});

import { describe, expect, it } from "vitest";
import { Prediction } from "../../shared/model/prediction.ts";
import {
  draftLike,
  draftOf,
  type PredictionDraft,
  predictionOf,
  suggestedName,
} from "../../web/views/theory/predictions/predictionDraft.ts";
import { SMOOTH, startOf } from "../../web/views/theory/surface/surfaceChoice.ts";

const ROUGH = { state: null, roughness: 2e-4, liftFactor: 0.8 };
const PROPELLER = { id: "p1", diameter: 0.076, pitchRatio: 0.8, bladeCount: 3, chordAt07: 0.0254, nozzle: false };

describe("a new prediction", () => {
  it("starts from the series propeller that is most like the measured one", () => {
    // A_E/A_0 = (c/D) Z / K_r with K_r 2.168 at 0.7 R: Oosterveld & van Oossanen (1975), table 1; 0.3342 × 3 / 2.168 = 0.462.
    expect(draftLike(PROPELLER)).toMatchObject({
      kind: "series",
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.46 },
      pitchRatio: 0.8,
      diameter: 0.076,
    });
    expect(draftLike({ ...PROPELLER, nozzle: true }).series.family).toBe("ka-4-70-19a");
    // Nobody's diameter is guessed: the form asks for it.
    expect(draftLike(null).diameter).toBeNull();
  });

  const start = draftLike(PROPELLER);
  it.each<{ title: string; draft: PredictionDraft; says: string }>([
    { title: "no pitch", draft: { ...start, pitchRatio: null }, says: "pitch ratio" },
    { title: "no blades", draft: { ...start, isSeriesWhole: false }, says: "number of blades" },
    { title: "no diameter", draft: { ...start, diameter: null }, says: "diameter" },
    { title: "no merit", draft: { ...start, kind: "staticMerit", staticMerit: null }, says: "static merit" },
    { title: "no propeller", draft: { ...start, kind: "blades", propellerId: "" }, says: "Choose a propeller" },
    {
      title: "no roughness",
      draft: { ...start, kind: "blades", surface: { ...SMOOTH, roughness: null } },
      says: "roughness",
    },
    { title: "a name that is taken", draft: { ...start, name: "mine" }, says: 'named "mine" already' },
  ])("says what is missing: $title", ({ draft, says }) => {
    const made = predictionOf(draft, ["mine"]);
    expect("missing" in made && made.missing).toContain(says);
  });

  it.each<PredictionDraft>([
    start,
    { ...start, series: { family: "ka-4-70-19a" } },
    { ...start, kind: "staticMerit" },
    { ...start, kind: "blades", surface: ROUGH, name: "as printed" },
  ])(
    "is a document that can be stored, and the same draft again when it is changed ($kind, $series.family)",
    (draft) => {
      const made = predictionOf(draft, []);
      if ("missing" in made) throw new Error(made.missing);
      expect(Prediction.parse(made.prediction)).toEqual(made.prediction);
      const again = predictionOf(draftOf(made.prediction, start), []);
      expect(again).toEqual(made);
    },
  );

  it("is named for what it is when no name is typed", () => {
    expect(suggestedName(start)).toBe("B 3-46, P/D 0.80, 76.0\u202fmm");
    expect(suggestedName({ ...start, kind: "blades" })).toBe("Blade elements, smooth");
    expect(suggestedName({ ...start, kind: "blades", surface: ROUGH })).toContain("200\u202fµm");
    const sanded = { ...start, kind: "blades", surface: startOf("sanded") } as const;
    expect(suggestedName(sanded)).toBe("Blade elements, sanded to P400");
  });
});

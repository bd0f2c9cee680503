import { describe, expect, it } from "vitest";
import {
  basisWords,
  choiceOf,
  SMOOTH,
  STATE_NAMES,
  type StateName,
  startOf,
  surfaceWords,
} from "../../web/views/theory/surface/surfaceChoice.ts";

describe("the surface of blades by how they were made", () => {
  it("gives a layer of 0.2 mm a step of h cos α across the flow", () => {
    // Cusp height: Dolenc & Mäkelä, Computer-Aided Design 26 (1994) 119; 0.2 mm × cos 60° = 0.1 mm.
    const layers = { state: "printed", layerHeight: 2e-4, flow: "acrossLayers", slope: Math.PI / 3 } as const;
    expect(choiceOf(layers)).toMatchObject({ state: layers, roughness: 1e-4 });
    expect(choiceOf({ ...layers, flow: "alongLayers" }).roughness).toBeLessThan(1e-4);
  });

  it.each(Object.keys(STATE_NAMES) as StateName[])(
    "tells the numbers of the state %s and where each comes from",
    (name) => {
      const { state, roughness, liftFactor } = startOf(name);
      expect(roughness).toBeGreaterThan(0);
      expect(liftFactor).toBeLessThanOrEqual(1);
      expect(basisWords(state!)).toMatch(/^Roughness [\d.]+\u202fµm: .+\. Lift factor [\d.]+: .+\.$/);
    },
  );

  it("is called by its state, else by its roughness", () => {
    expect(surfaceWords(startOf("coated"))).toBe("coated with epoxy");
    expect(surfaceWords(SMOOTH)).toBe("smooth");
    expect(surfaceWords({ ...SMOOTH, roughness: 5e-5 })).toBe("roughness 50\u202fµm");
  });
});

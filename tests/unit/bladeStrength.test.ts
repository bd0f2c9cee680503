import { describe, expect, test } from "vitest";
import { materialAlongBlade } from "../../shared/propeller/strength/allowableStress.ts";
import { bladeStrength } from "../../shared/propeller/strength/bladeStrength.ts";
import { curvatureOf } from "../../shared/propeller/strength/deflection.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
import { sectionProperties } from "../../shared/propeller/strength/sectionProperties.ts";
import { sectionStress } from "../../shared/propeller/strength/sectionStress.ts";
import { BAR, evenPieces, PRINT } from "./bladeBeam.ts";

const LOADED = { ...PRINT, geometry: BAR, elements: evenPieces(40, () => 50), rotationRate: 0 };
const codes = (request: Parameters<typeof bladeStrength>[0]) => bladeStrength(request).warnings.map(({ code }) => code);

describe("what a blade can take", () => {
  test("strength follows layers, temperature and water; fatigue strength its factor besides", () => {
    const material = { ...PRINT.material, layerAngle: Math.PI / 2, temperatureFactor: 0.9, waterFactor: 0.8 };
    const { strength, fatigueStrength, modulus } = materialAlongBlade(material);
    expect(strength).toBeCloseTo(20e6 * 0.72, 3);
    expect(fatigueStrength).toBeCloseTo(20e6 * 0.72 * 0.3, 3);
    expect(modulus).toBeCloseTo(1e9 * 0.72, 3);
  });

  test("layers stacked along the blade halve the safety factor where they are half as strong", () => {
    const across = { ...PRINT.material, layerAngle: Math.PI / 2 };
    const flat = bladeStrength(LOADED).critical.safetyFactor!;
    expect(bladeStrength({ ...LOADED, material: across }).critical.safetyFactor).toBeCloseTo(flat / 2, 9);
  });

  test.each(PRINTED_MATERIALS)(
    "$name: weaker across its layers, and says that its values have no source",
    (material) => {
      expect(material.strengthAcrossLayers).toBeLessThan(material.strengthInLayer);
      expect(material.source).toBe("common practice, no source");
    },
  );
});

describe("what the sentence says", () => {
  test("place, stress, strength, both safety factors, the verdict and the deflection", () => {
    expect(bladeStrength(LOADED).sentence).toMatchInlineSnapshot(
      `"The blade is stressed most at 0.20 of the radius (20.0 mm): 3.00 MPa of tension, against 40.0 MPa that test print can take along the blade. Safety factor 13 for a single pull and 4.0 for load repeated at blade rate: enough for the 2.0 wanted. The tip bends 1.2 mm."`,
    );
  });

  test("a blade without load has no safety factor", () => {
    const idle = bladeStrength({ ...LOADED, elements: evenPieces(4, () => 0) });
    expect(idle.critical.safetyFactor).toBeNull();
    expect(idle.sentence).toBe("There is no load on the blade.");
  });

  test("guards, eye protection and data sheets are named in the cautions", () => {
    const cautions = bladeStrength(LOADED).cautions.join(" ");
    for (const word of ["guard", "eye protection", "data sheet", "local rules"]) expect(cautions).toContain(word);
  });
});

describe("warnings", () => {
  test("a sound blade has none", () => expect(codes(LOADED)).toEqual([]));

  test("a load that takes more than fatigue allows is told", () => {
    expect(codes({ ...LOADED, loadFactor: 3 })).toEqual(["propeller.blade-overstressed"]);
  });

  test("a tip that bends a tenth of the blade is told", () => {
    const soft = { ...PRINT.material, modulusInLayer: 1e8 };
    expect(codes({ ...LOADED, material: soft })).toEqual(["propeller.blade-bends-far"]);
  });

  test("skew beyond 15° is told, because twisting is left out", () => {
    const stations = BAR.stations.map((station, i) => ({ ...station, skew: 0.2 * i }));
    expect(codes({ ...LOADED, geometry: { ...BAR, stations } })).toEqual(["propeller.blade-twists"]);
  });
});

test("a station without thickness is named with its field", () => {
  const stations = BAR.stations.map((one, i) => (i === 1 ? { ...one, thickness: 0 } : one));
  expect(() => bladeStrength({ ...LOADED, geometry: { ...BAR, stations } })).toThrow(
    expect.objectContaining({
      problem: expect.objectContaining({ code: "propeller.station-thickness", where: "stations[1].thickness" }),
    }),
  );
});

describe("a section turned by its pitch angle", () => {
  test.each([0, 0.3, 0.8, 1.3])(
    "bends in the direction of the load where it is as stiff both ways: %s rad",
    (angle) => {
      const [flat, edge] = [Math.cos(angle), -Math.sin(angle)];
      const stiffness = { flatwiseStiffness: 2, edgewiseStiffness: 2 };
      const curvature = curvatureOf({ flatwiseMoment: flat, edgewiseMoment: edge, ...stiffness, pitchAngle: angle });
      expect(curvature.axialCurvature).toBeCloseTo(0.5, 12);
      expect(curvature.tangentialCurvature).toBeCloseTo(0, 12);
    },
  );

  test("at 90° thrust bends it over its edge", () => {
    const properties = sectionProperties({ shape: "plate", chord: 0.02, thickness: 0.004, camber: 0 });
    const loads = { axialForce: 4, tangentialForce: 0, centrifugalForce: 0, axialMoment: 0.16, tangentialMoment: 0 };
    const { flatwiseMoment, edgewiseMoment, greatestTension } = sectionStress(loads, Math.PI / 2, properties);
    expect(flatwiseMoment).toBeCloseTo(0, 12);
    expect(edgewiseMoment).toBeCloseTo(-0.16, 12);
    // 6 M/(b h²) with the chord as depth.
    expect(greatestTension).toBeCloseTo((6 * 0.16) / (0.004 * 0.02 ** 2), 3);
  });
});

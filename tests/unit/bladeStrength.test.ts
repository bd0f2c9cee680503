import { describe, expect, test } from "vitest";
import { materialAlongBlade } from "../../shared/propeller/strength/allowableStress.ts";
import { bladeStrength } from "../../shared/propeller/strength/bladeStrength.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
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
    expect(bladeStrength(LOADED).sentence).toMatchInlineSnapshot(`"The blade is stressed most at 0.20 of the radius (20.0 mm): 3.00 MPa, against 40.0 MPa that test print can take along the blade. Safety factor 13 for a single pull and 4.0 for load repeated at blade rate: enough for the 2.0 wanted. The tip bends 1.2 mm."`);
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

describe("stations that no beam can be made of", () => {
  const withStation = (i: number, change: object) => ({
    ...LOADED,
    geometry: { ...BAR, stations: BAR.stations.map((one, k) => (k === i ? { ...one, ...change } : one)) },
  });
  test.each([
    { request: withStation(1, { thickness: 0 }), where: "geometry.stations[1].thickness" },
    { request: withStation(0, { chord: 0 }), where: "geometry.stations[0].chord" },
    { request: withStation(2, { radius: 0.05 }), where: "geometry.stations[2].radius" },
    { request: { ...LOADED, geometry: { ...BAR, hubDiameter: 0.2 } }, where: "geometry.hubDiameter" },
  ])("$where is named", ({ request, where }) => {
    expect(() => bladeStrength(request)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "propeller.blade-not-a-beam", where }) }),
    );
  });
});

describe("laws", () => {
  test("a square bar bends by the same whatever its pitch angle, in the direction of the load", () => {
    const twisted = (pitchAngle: number) => {
      const stations = BAR.stations.map((station) => ({ ...station, chord: 0.004, pitchAngle }));
      return bladeStrength({ ...LOADED, geometry: { ...BAR, stations } }).tipDeflection;
    };
    const straight = twisted(0);
    for (const angle of [0.3, 0.8, 1.3]) {
      expect(twisted(angle).axial).toBeCloseTo(straight.axial, 12);
      expect(twisted(angle).tangential).toBeCloseTo(0, 12);
    }
  });

  test("at a pitch angle of 90° thrust bends the bar over its edge", () => {
    const stations = BAR.stations.map((station) => ({ ...station, pitchAngle: Math.PI / 2 }));
    const { flatwiseMoment, edgewiseMoment, greatestTension } = bladeStrength({
      ...LOADED,
      geometry: { ...BAR, stations },
    }).sections[0]!;
    const moment = (50 * 0.08 ** 2) / 2;
    expect(flatwiseMoment).toBeCloseTo(0, 12);
    expect(edgewiseMoment).toBeCloseTo(-moment, 9);
    expect(greatestTension).toBeCloseTo((6 * moment) / (0.004 * 0.02 ** 2), -1);
  });
});

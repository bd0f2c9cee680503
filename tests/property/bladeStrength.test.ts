import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { BladeStrengthRequest } from "../../shared/model/bladeStrength.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import { bladeStrength } from "../../shared/propeller/strength/bladeStrength.ts";
import { predictedStrength } from "../../shared/propeller/strength/predictedStrength.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
import { relative } from "../relative.ts";
import { BAR, evenPieces, PRINT } from "../unit/bladeBeam.ts";

const loaded = (load: number, more: object = {}) =>
  bladeStrength({ ...PRINT, geometry: BAR, elements: evenPieces(20, () => load), rotationRate: 0, ...more });
const positive = fc.double({ min: 0.1, max: 100, noNaN: true });

describe("laws of the beam", () => {
  test("twice the load is twice the stress and the deflection, and half the safety factor", () => {
    fc.assert(
      fc.property(positive, (load) => {
        const [one, two] = [loaded(load), loaded(2 * load)];
        expect(two.critical.greatestTension).toSatisfy(relative(2 * one.critical.greatestTension, 1e-9));
        expect(two.tipDeflection.total).toSatisfy(relative(2 * one.tipDeflection.total, 1e-9));
        expect(two.critical.safetyFactor).toSatisfy(relative(one.critical.safetyFactor! / 2, 1e-9));
      }),
    );
  });

  test("twice the thickness is a quarter of the stress and an eighth of the deflection", () => {
    const thick = BAR.stations.map((station) => ({ ...station, thickness: 2 * station.thickness }));
    const [thin, double] = [loaded(10), loaded(10, { geometry: { ...BAR, stations: thick } })];
    expect(double.critical.greatestTension).toSatisfy(relative(thin.critical.greatestTension / 4, 1e-9));
    expect(double.tipDeflection.axial).toSatisfy(relative(thin.tipDeflection.axial / 8, 1e-9));
  });

  test("a stiffer material bends less and is stressed the same", () => {
    const stiff = { ...PRINT.material, modulusInLayer: 3 * PRINT.material.modulusInLayer };
    const [soft, hard] = [loaded(10), loaded(10, { material: stiff })];
    expect(hard.critical.greatestTension).toBe(soft.critical.greatestTension);
    expect(hard.tipDeflection.axial).toSatisfy(relative(soft.tipDeflection.axial / 3, 1e-9));
  });

  test("a propeller twice the size at the tip speed of the small one is stressed the same", () => {
    // Loads per length double, lengths double, section moduli grow eightfold: M/Z is unchanged.
    const doubled = BAR.stations.map(({ radius, chord, thickness, ...rest }) => ({
      ...rest,
      radius: 2 * radius,
      chord: 2 * chord,
      thickness: 2 * thickness,
    }));
    const geometry = { ...BAR, diameter: 2 * BAR.diameter, hubDiameter: 2 * BAR.hubDiameter, stations: doubled };
    const elements = evenPieces(20, () => 20).map((piece) => ({
      ...piece,
      radius: 2 * piece.radius,
      width: 2 * piece.width,
    }));
    const [small, large] = [loaded(10, { rotationRate: 50 }), loaded(0, { geometry, elements, rotationRate: 25 })];
    expect(large.critical.greatestTension).toSatisfy(relative(small.critical.greatestTension, 1e-9));
  });
});

/** Every number anywhere in a result. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === "number") yield value;
  else if (typeof value === "object" && value !== null)
    for (const inner of Object.values(value)) yield* numbersIn(inner);
}

test("ahead, astern, at any speed and of any shape no number of the answer is not finite", () => {
  const running = fc.record({
    rotationRate: fc.oneof(
      fc.double({ min: 1, max: 300, noNaN: true }),
      fc.double({ min: -300, max: -1, noNaN: true }),
    ),
    advanceSpeed: fc.double({ min: -3, max: 8, noNaN: true }),
    rakeAngle: fc.double({ min: -0.5, max: 0.5, noNaN: true }),
    sectionShape: fc.constantFrom("parabolic", "ellipse", "plate"),
    material: fc.constantFrom(...PRINTED_MATERIALS),
    pitchRatio: fc.double({ min: 0.5, max: 1.4, noNaN: true }),
    blades: fc.integer({ min: 2, max: 6 }),
  });
  fc.assert(
    fc.property(running, ({ pitchRatio, blades, ...rest }) => {
      const series = { family: "wageningen-b", blades, areaRatio: 0.5, pitchRatio } as const;
      const geometry = seriesGeometry({ series, diameter: 0.08, outsideRange: true });
      const fluid = { kind: "fresh", temperature: 291.15 } as const;
      const request = BladeStrengthRequest.parse({ geometry, surface: { roughness: 1e-4 }, fluid, ...rest });
      const answer = predictedStrength({ ...request, fluid: fluidProperties(fluid) });
      expect([...numbersIn(answer)].filter((number) => !Number.isFinite(number))).toEqual([]);
      expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined|unknown/);
    }),
    { numRuns: 60 },
  );
});

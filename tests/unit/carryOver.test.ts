import { describe, expect, test } from "vitest";
import { CarryOverRequest } from "../../shared/model/carryOver.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { codesOf, problemOf } from "./propellerProblems.ts";

describe("carrying coefficients over", () => {
  const fresh = { kind: "fresh", temperature: 291.15 };
  const measured = {
    fluid: fresh,
    rotationRate: 45,
    diameter: 0.076,
    thrustCoefficient: { value: 0.25, standardUncertainty: 0.003 },
    torqueCoefficient: { value: 0.03, standardUncertainty: 0.0005 },
    tankWidth: 0.6,
    tankDepth: 0.5,
  };
  const target = { fluid: fresh, rotationRate: 45, diameter: 0.076 };
  const blade = { bladeCount: 3, chordRatio: 0.28, pitchRatio: 0.9 };
  const carried = (changes: { measured?: object; target?: object; blade?: object } = {}) =>
    carryOver(
      CarryOverRequest.parse({
        measured: { ...measured, ...changes.measured },
        target: { ...target, ...changes.target },
        blade: { ...blade, ...changes.blade },
      }),
    );
  const factorOf = (result: ReturnType<typeof carried>, cause: string) =>
    result.factors.find((factor) => factor.cause === cause);

  test("only what changes is listed, and the doubt of the stand is kept", () => {
    const result = carried();
    expect(result.factors.map(({ cause }) => cause)).toEqual(["reynolds", "returnFlow"]);
    expect(factorOf(result, "reynolds")).toMatchObject({ thrust: 1, torque: 1, thrustUncertainty: 0 });
    expect(codesOf(result)).toEqual([]);
  });

  test("from air to water the Reynolds number rises: more thrust, less torque, and more doubt", () => {
    const air = { kind: "air", temperature: 293.15, pressure: 101325, humidity: 0.5 };
    const result = carried({ measured: { fluid: air, rotationRate: 120 } });
    const reynolds = factorOf(result, "reynolds")!;
    expect(result.reynolds.target!).toBeGreaterThan(result.reynolds.measured!);
    expect(reynolds.thrust).toBeGreaterThan(1);
    expect(reynolds.torque).toBeLessThan(1);
    expect(reynolds.thrustUncertainty).toBeGreaterThan(0.005);
    expect(factorOf(result, "density")!.thrust).toBeCloseTo(998.6 / 1.199, -1);
  });

  test("above Re 2e5 on both sides the change is that of drag alone, with a quarter of it as doubt", () => {
    const fast = { rotationRate: 200, diameter: 0.2 };
    const result = carried({
      measured: { ...fast, tankWidth: 3, tankDepth: 3 },
      target: { ...fast, rotationRate: 100 },
    });
    const reynolds = factorOf(result, "reynolds")!;
    expect(result.reynolds.target).toBeGreaterThan(2e5);
    expect(reynolds.torque).toBeGreaterThan(1);
    expect(reynolds.torqueUncertainty).toBeCloseTo((0.25 * (reynolds.torque - 1)) / reynolds.torque, 12);
  });

  test("the return flow of a tank is between nothing and an inflow, larger in a smaller tank", () => {
    const small = factorOf(carried({ measured: { tankWidth: 0.3, tankDepth: 0.25 } }), "returnFlow")!;
    const large = factorOf(carried({ measured: { tankWidth: 3, tankDepth: 2.5 } }), "returnFlow")!;
    expect(small.thrust).toBeGreaterThan(large.thrust);
    expect(large.thrust).toBeGreaterThan(1);
    // A rectangular distribution from 1: the doubt is the excess over sqrt(3) (GUM 4.3.7).
    expect(small.thrustUncertainty * small.thrust).toBeCloseTo((small.thrust - 1) / Math.sqrt(3), 12);
  });

  test("a disc that fills a third of the tank is refused", () => {
    const tiny = { tankWidth: 0.12, tankDepth: 0.12 };
    expect(() => carried({ measured: tiny })).toThrow(problemOf("propeller.tank-too-small", "measured.tankWidth"));
  });

  test("near the surface the thrust lost there is given back, in part", () => {
    const factor = factorOf(carried({ measured: { shaftImmersion: 0.038 } }), "surface")!;
    expect(factor.thrust).toBeGreaterThan(1);
    expect(factor.torque).toBeLessThan(factor.thrust);
    expect(factorOf(carried({ measured: { shaftImmersion: 0.2 } }), "surface")).toBeUndefined();
  });

  test("a nozzle that comes or goes is a wide range, and says to measure it", () => {
    const added = factorOf(carried({ target: { nozzle: true } }), "nozzle")!;
    expect(added.thrust).toBeCloseTo((1 + 2 ** (1 / 3)) / 2, 12);
    expect(added.reason).toContain("Measure it as it will work.");
    expect(factorOf(carried({ measured: { nozzle: true } }), "nozzle")!.thrust).toBeLessThan(1);
  });

  test("twice the diameter at the same rotation rate is 16 times the thrust and 32 times the torque but for the Reynolds number", () => {
    const size = factorOf(carried({ target: { diameter: 0.152 } }), "diameter")!;
    expect(size.thrust).toBeCloseTo(16, 12);
    expect(size.torque).toBeCloseTo(32, 12);
  });

  test("without blade and tank it says what is missing, and the Reynolds number is a range", () => {
    const { tankWidth: _, ...without } = measured;
    const sea = { kind: "sea", temperature: 281.15, salinity: 33 };
    const result = carryOver(CarryOverRequest.parse({ measured: without, target: { ...target, fluid: sea } }));
    expect(codesOf(result)).toEqual(["propeller.blade-not-stated", "propeller.tank-not-stated"]);
    expect(result.reynolds).toEqual({ measured: null, target: null });
    expect(factorOf(result, "reynolds")!.thrustUncertainty).toBeGreaterThan(0);
  });
});

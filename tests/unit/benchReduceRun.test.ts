import { describe, expect, test } from "vitest";
import { Reduction } from "../../shared/model/reduction.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { codes, propellerOf, recipeOf, reduce, tableOf, USES } from "./benchTable.ts";

describe("a clean log", () => {
  const reduction = reduce({ table: tableOf(quietColumns()), recipe: recipeOf(USES) });

  test("gives the thrust coefficient that made it, within its interval, from every step", () => {
    const [low, high] = reduction.thrustCoefficient.interval95;
    expect(low).toBeLessThan(0.2);
    expect(high).toBeGreaterThan(0.2);
    expect(high - low).toBeLessThan(0.002);
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus.every(({ used }) => used)).toBe(true);
  });

  test("is a document of the model, and stays one through JSON", () => {
    expect(Reduction.parse(JSON.parse(JSON.stringify(reduction)))).toEqual(reduction);
  });

  test("takes its zero from the rests at both ends and reports the drift", () => {
    expect(reduction.tare.windows).toHaveLength(2);
    expect(reduction.tare.windows[0]!.thrust.value).toBeCloseTo(0.8, 1);
    const [low, high] = reduction.tare.drift!.interval95;
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
  });

  test("raises no warning but that the scale was not calibrated", () => {
    expect(codes(reduction)).toEqual(["bench.no-calibration"]);
  });

  test("has no warning left when the calibration is stated, and a wider interval", () => {
    const recipe = recipeOf(USES, { corrections: { thrust: { relativeUncertainty: 0.01 } } });
    const calibrated = reduce({ table: tableOf(quietColumns()), recipe });
    expect(codes(calibrated)).toEqual([]);
    expect(calibrated.thrustCoefficient.standardUncertainty).toBeGreaterThan(0.002);
    expect(calibrated.thrustFit.independentUncertainty).toBeCloseTo(reduction.thrustFit.independentUncertainty, 12);
  });
});

test("a fluid that nobody stated is told with what it costs, and changes no number", () => {
  const table = tableOf(quietColumns());
  const stated = reduce({ table, recipe: recipeOf(USES) });
  const assumed = reduce({ table, recipe: recipeOf(USES, { fluidAssumed: true }) });
  const told = assumed.warnings.find(({ code }) => code === "bench.fluid-assumed")!.message;
  // 998.60 kg/m³ fresh (IAPWS SR6-08) and 1025.27 kg/m³ at salinity 35 (Unesco tables of EOS-80), both at 18 °C, from memory.
  expect(told).toContain("fresh water, 18 °C was taken, 998.6 kg/m³");
  expect(told).toContain("sea water is 2.7 % denser than fresh");
  expect(told).toContain("K_T and C_P are 1 % smaller and the static merit 0.5 %");
  expect(assumed.thrustCoefficient).toEqual(stated.thrustCoefficient);
  expect(codes(stated)).not.toContain("bench.fluid-assumed");
});

describe("what runs share", () => {
  const keysOf = (sha: string, factor: number) => {
    const recipe = recipeOf(USES, { corrections: { thrust: { factor, relativeUncertainty: 0.01 } } });
    const reduction = reduce({
      ...{ table: tableOf(quietColumns()), recipe, propeller: propellerOf({ diameterUncertainty: 1e-4 }) },
      source: { sha256: sha, program: "test" },
    });
    return reduction.thrustFit.components.map(({ key }) => key);
  };
  const keyLike = (keys: string[], start: string) => keys.find((key) => key.startsWith(start));

  test("calibration and diameter have the same key in two runs, the zero has not", () => {
    const [a, b, c] = [keysOf("a".repeat(64), 1), keysOf("b".repeat(64), 1), keysOf("b".repeat(64), 1.1)];
    expect(keyLike(a, "thrust-calibration")).toBe(keyLike(b, "thrust-calibration"));
    expect(keyLike(c, "thrust-calibration")).not.toBe(keyLike(b, "thrust-calibration"));
    expect(keyLike(a, "diameter")).toBe(keyLike(b, "diameter"));
    expect(keyLike(a, "thrust-tare")).not.toBe(keyLike(b, "thrust-tare"));
  });
});

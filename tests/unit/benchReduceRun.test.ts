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

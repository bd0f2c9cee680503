import { describe, expect, test } from "vitest";
import { FinishFitRequest } from "../../shared/model/finishFit.ts";
import {
  LARGE_RESEARCH_PROPELLER,
  LARGE_STATIC,
  RESEARCH_AIR,
} from "../../shared/propeller/blade/researchPropellers.data.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { GRAIN_SIZES } from "../../shared/propeller/finish/grits.data.ts";
import { smoothRoughness } from "../../shared/propeller/finish/smoothBlade.ts";
import { laminarFloor } from "../../shared/propeller/section/laminarFloor.ts";

/**
 * Two-bladed research propeller of smooth surface in air, measured at rest: Deters, Ananda & Selig, Reynolds number effects
 * on the performance of small-scale propellers, AIAA 2014-2151 (2014), 9 x 6.75 in. Neighbouring points differ by up to
 * 3 %, taken as standard uncertainty.
 */
describe("a smooth propeller measured by others is found smooth", () => {
  test.each(LARGE_STATIC.map(([rpm, C_T, C_P]) => ({ rpm, C_T, C_P })))("at $rpm rpm", ({ rpm, C_T, C_P }) => {
    const of = (value: number) => ({ value, standardUncertainty: 0.03 * value });
    const point = { thrustCoefficient: of(C_T), torqueCoefficient: of(C_P / (2 * Math.PI)) };
    const request = FinishFitRequest.omit({ fluid: true }).parse({
      blade: { given: "geometry", geometry: LARGE_RESEARCH_PROPELLER },
      rotationRate: rpm / 60,
      finishes: [{ name: "as moulded", measured: [point] }],
    });
    const { finishes, smoothGain, claim } = finishFit({ ...request, fluid: RESEARCH_AIR });
    const [finish] = finishes;
    if (finish?.state !== "fitted") throw new Error("the measurement could not be fitted");
    const [low, high] = finish.liftFactor.interval95;
    expect(low).toBeLessThan(1);
    expect(high).toBeGreaterThan(1);
    expect(finish.dragFactor.interval95[0]).toBeLessThan(1);
    expect(finish.dragFactor.interval95[1]).toBeGreaterThan(1);
    // Nothing is left to gain on a smooth blade.
    expect(smoothGain!.thrustAtEqualRotation.interval95[0]).toBeLessThan(1);
    expect(claim!.verdict).toBe("refuted");
  });
});

describe("limits of smoothness", () => {
  // Two-sided Blasius friction 2.656/sqrt(Re), computed by numpy 2.4.6.
  test.each([
    [1e4, 0.02656],
    [5e4, 0.011878],
    [2e5, 0.005939],
  ])("at Re %s the laminar floor is %s", (reynolds, floor) => {
    expect(laminarFloor(reynolds)).toBeCloseTo(floor, 6);
  });

  test("at U k/ν = 100 a roughness still counts as smooth", () => {
    // Schlichting, Boundary-Layer Theory, 7th ed. (1979), ch. XXI: k_adm = 100 ν/U; from memory. 10 m/s in water of 1e-6 m²/s.
    const [chord, speed, kinematicViscosity] = [0.02, 10, 1e-6];
    expect(smoothRoughness(chord, (speed * chord) / kinematicViscosity)).toBeCloseTo(10e-6, 12);
  });
});

test("grain sizes are those of the P grades", () => {
  // FEPA 43-2 / ISO 6344-3, d_s50 with its tolerance, from memory: P240 58.5 ± 2.0, P400 35.0 ± 1.5, P800 21.8 ± 1.0,
  // P1200 15.3 ± 1.0, P2000 10.3 ± 0.8 µm.
  const printed = [
    ["P240", 58.5e-6, 2e-6],
    ["P400", 35e-6, 1.5e-6],
    ["P800", 21.8e-6, 1e-6],
    ["P1200", 15.3e-6, 1e-6],
    ["P2000", 10.3e-6, 0.8e-6],
  ] as const;
  for (const [grit, size, tolerance] of printed) expect(Math.abs(GRAIN_SIZES[grit] - size)).toBeLessThan(tolerance);
});

import { describe, expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { FinishFitRequest } from "../../shared/model/finishFit.ts";
import {
  LARGE_RESEARCH_PROPELLER,
  LARGE_STATIC,
  RESEARCH_AIR,
} from "../../shared/propeller/blade/researchPropellers.data.ts";
import { bladeResponse } from "../../shared/propeller/finish/bladeResponse.ts";
import { finishFit } from "../../shared/propeller/finish/finishFit.ts";
import { GRAIN_SIZES } from "../../shared/propeller/finish/grits.data.ts";
import { BROAD_DOUBT, seriesTie } from "../../shared/propeller/finish/seriesTie.ts";
import { smoothRoughness } from "../../shared/propeller/finish/smoothBlade.ts";
import { laminarFloor } from "../../shared/propeller/section/laminarFloor.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

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
    const { finishes, smoothGain, claim } = finishFit({ ...request, fluid: RESEARCH_AIR, claimedFactor: 2 });
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

/** Of the B series, tables 1 and 5 of Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251. */
describe("broad blades are tied to the published tests of their series", () => {
  const SCREWS = [
    [2, 0.3],
    [3, 0.35],
    [3, 0.5],
    [4, 0.4],
    [4, 0.55],
    [4, 0.7],
    [5, 0.6],
  ].flatMap(([blades, areaRatio]) =>
    [0.6, 0.8, 1, 1.2].map((pitchRatio) => ({ blades: blades!, areaRatio: areaRatio!, pitchRatio })),
  );
  const model = { thrust: 0.04, torque: 0.05 };
  const missed = SCREWS.map((screw) => {
    const series = { family: "wageningen-b", ...screw } as const;
    const geometry = seriesGeometry({ series, diameter: 0.25, outsideRange: false });
    const fluid = fluidProperties({ kind: "fresh", temperature: 288.15 });
    const running = { geometry, fluid, rotationRate: 30, advanceRatios: [0] };
    const clean = { roughness: 0, liftFactor: 1, dragFactor: 1 };
    const at = (tie: { thrust: number; torque: number }) =>
      bladeResponse({ ...running, tie }).response(clean)!.points[0]!;
    const tested = openWaterOfSeries({ series, advanceRatio: 0 });
    const off = (of: "thrustCoefficient" | "torqueCoefficient", tie: { thrust: number; torque: number }) =>
      at(tie)[of] / tested[of] - 1;
    const tie = seriesTie(geometry, model).tie;
    const free = { thrust: 1, torque: 1 };
    return {
      free: [off("thrustCoefficient", free), off("torqueCoefficient", free)] as const,
      tied: [off("thrustCoefficient", tie), off("torqueCoefficient", tie)] as const,
    };
  });
  const rms = (values: readonly number[]) => Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / values.length);

  test("tied, the series' own blades make the series' coefficients to all digits", () => {
    for (const { tied } of missed) for (const off of tied) expect(Math.abs(off)).toBeLessThan(1e-9);
  });

  test("untied they miss by what is stated for broad blades", () => {
    expect(Math.abs(rms(missed.map(({ free }) => free[0])) - BROAD_DOUBT.thrust)).toBeLessThan(0.02);
    expect(Math.abs(rms(missed.map(({ free }) => free[1])) - BROAD_DOUBT.torque)).toBeLessThan(0.02);
  });

  test("blades that the series has not tested are not tied, and their doubt says so", () => {
    const series = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 1.8 } as const;
    const far = seriesTie(seriesGeometry({ series, diameter: 0.1, outsideRange: true }), model);
    expect(far.tie).toEqual({ thrust: 1, torque: 1 });
    expect(far.warnings.map(({ code }) => code)).toEqual(["propeller.broad-untied"]);
    expect(far.model.thrust).toBeCloseTo(Math.hypot(model.thrust, BROAD_DOUBT.thrust), 12);
  });

  test("slender blades, which the section model was set at, stay as they are", () => {
    expect(seriesTie(LARGE_RESEARCH_PROPELLER, model)).toEqual({ tie: { thrust: 1, torque: 1 }, model, warnings: [] });
  });
});

import { describe, expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { bladesPredictor } from "../../shared/propeller/prediction/bladesPredictor.ts";
import { predictedBollard, predictedOpenWater } from "../../shared/propeller/prediction/predictedCurves.ts";
import { seriesPredictor } from "../../shared/propeller/prediction/seriesPredictor.ts";
import { comparableSeries } from "../../shared/propeller/series/comparableSeries.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import { relativeError } from "../relative.ts";

const B4_70 = { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 } as const;

/**
 * Polynomials of Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251, table 5, evaluated apart
 * from this code in Python 3.11 with numpy 2.4.6; zero thrust by `scipy.optimize.brentq` (scipy 1.17.1).
 */
const PUBLISHED = [
  { J: 0, K_T: 0.4547, K_Q: 0.06754 },
  { J: 0.2, K_T: 0.3919, K_Q: 0.05942 },
  { J: 0.4, K_T: 0.3142, K_Q: 0.04921 },
  { J: 0.6, K_T: 0.2256, K_Q: 0.03727 },
  { J: 0.8, K_T: 0.1297, K_Q: 0.02397 },
];
const ZERO_THRUST = 1.0618;

describe("a series as a prediction", () => {
  const predictor = seriesPredictor(B4_70, 0.2);

  test.each(PUBLISHED)("has the published coefficients at J $J", ({ J, K_T, K_Q }) => {
    const at = predictor.at({ rotationRate: 10, advanceSpeed: J * 10 * 0.2 });
    if (at.state === "unknown") throw new Error(at.reason);
    expect(Math.abs(at.thrustCoefficient - K_T)).toBeLessThan(6e-5);
    expect(Math.abs(at.torqueCoefficient - K_Q)).toBeLessThan(6e-6);
  });

  test("its curve runs from rest to the published end of the thrust, with η = J K_T/(2π K_Q) on the way", () => {
    const curve = predictedOpenWater(predictor, 10, 20);
    expect(curve[0]!.advanceRatio).toBe(0);
    expect(Math.abs(curve.at(-1)!.advanceRatio - ZERO_THRUST)).toBeLessThan(5e-5);
    // Carlton, Marine Propellers and Propulsion, ch. 6: at J 0.8 0.8 · 0.1297/(2π · 0.02397) = 0.689.
    const near = curve.reduce((a, b) => (Math.abs(b.advanceRatio - 0.8) < Math.abs(a.advanceRatio - 0.8) ? b : a));
    expect(Math.abs(near.efficiency! - 0.689)).toBeLessThan(0.005);
  });

  test("says that its numbers are those of a smooth, well-made propeller, and gives none astern", () => {
    expect(predictor.warnings.map(({ code }) => code)).toEqual(["propeller.series-yardstick"]);
    expect(predictor.at({ rotationRate: 10, advanceSpeed: -1 }).state).toBe("unknown");
  });
});

// B3-60, P/D 1.0, D 0.10 m, 75 rev/s in 999.1 kg/m³ by the same polynomials, apart from this code: K_T 0.4300, 241.6 N.
test("at bollard thrust is K_T ρ n² D⁴ and power 2π K_Q ρ n³ D⁵", () => {
  const predictor = seriesPredictor({ ...B4_70, blades: 3, areaRatio: 0.6 }, 0.1);
  const [point] = predictedBollard(predictor, 999.1, [75]);
  expect(Math.abs(point!.thrust - 241.6)).toBeLessThan(0.06);
  const large = predictedBollard(seriesPredictor(B4_70, 0.2), 1000, [10])[0]!;
  expect(relativeError(large.shaftPower, 2 * Math.PI * 0.06754 * 1000 * 10 ** 3 * 0.2 ** 5)).toBeLessThan(1e-4);
});

/**
 * By hand: three blades of even chord 20 mm from r = 10 to 50 mm have 3 · 20 · 40 mm² = 2400 mm², of the disc of 100 mm
 * 0.3056. The outline of the series lies 1 to 2 % under its nominal area: (2/π) ∫ K_r d(r/R) = 0.983 with a straight tip
 * (Oosterveld & van Oossanen 1975, table 1), more with a round one.
 */
test("the comparable screw of blades of even chord has their area, by the outline printed for the series", () => {
  const stations = [10, 20, 30, 40, 50].map((millimetres) => ({
    radius: millimetres / 1000,
    chord: 0.02,
    // P/D of 1 at all radii: θ = atan(D/(2π r)).
    pitchAngle: Math.atan(0.1 / ((2 * Math.PI * millimetres) / 1000)),
    thickness: 0.002,
    camber: 0,
  }));
  const screw = comparableSeries({ bladeCount: 3, diameter: 0.1, hubDiameter: 0.02, stations })!;
  expect(screw.blades).toBe(3);
  // Between the stations the angle follows a cubic: the pitch at 0.7 R is that of none of them.
  expect(Math.abs(screw.pitchRatio - 1)).toBeLessThan(0.01);
  expect(Math.abs(screw.areaRatio / 0.3056 - 1)).toBeLessThan(0.03);
});

// The same screw by its sections: at rest 0.09 low to 0.26 high in thrust is what the tested screws of the series show, see
// tests/reference/bladesOfSeries.test.ts.
test("blade elements of broad blades as a prediction say how far off such blades are", () => {
  const geometry = seriesGeometry({ series: B4_70, diameter: 0.2, outsideRange: false });
  const fluid = fluidProperties({ kind: "fresh", temperature: 288.15 });
  const surface = { roughness: 0, liftFactor: 1, dragFactor: 1 };
  const predictor = bladesPredictor({ geometry, surface, fluid });
  expect(predictor.warnings.map(({ code }) => code)).toContain("propeller.blades-broad");
  const at = predictor.at({ rotationRate: 40, advanceSpeed: 0 });
  if (at.state === "unknown") throw new Error(at.reason);
  expect(at.thrustCoefficient / 0.4547).toBeGreaterThan(0.91);
  expect(at.thrustCoefficient / 0.4547).toBeLessThan(1.26);
  expect(predictor.at({ rotationRate: 0, advanceSpeed: 1 })).toMatchObject({ state: "unknown" });
});

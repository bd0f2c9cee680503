import { describe, expect, test } from "vitest";
import { carriedPropeller, scaledPropeller } from "../../shared/drive/carriedPropeller.ts";
import { coefficientAt } from "../../shared/drive/curveEnd.ts";
import { measuredCurve, seriesPropellerCurve, withShapeOf } from "../../shared/drive/propellerCurves.ts";
import type { AdvanceFit } from "../../shared/model/advance.ts";
import type { PropellerCurve } from "../../shared/model/drivePropeller.ts";
import { DrivePropeller } from "../../shared/model/drivePropeller.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { relative } from "../relative.ts";

const K_T = ({ thrustCoefficient, openWater }: PropellerCurve, J: number) =>
  coefficientAt(thrustCoefficient.value, openWater!.thrust, J);
const K_Q = ({ torqueCoefficient, openWater }: PropellerCurve, J: number) =>
  coefficientAt(torqueCoefficient.value, openWater!.torque, J);

const B4_70 = { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 } as const;

describe("curve of a series propeller", () => {
  test("its polynomial is that of the series, from rest to where the thrust ends", () => {
    const { curve, warnings } = seriesPropellerCurve({ series: B4_70 });
    // Oosterveld & van Oossanen 1975, tables 5 and 6, evaluated independently: B4-70, P/D 1.0, K_T 0.4547 and 10 K_Q 0.6754 at
    // rest, no thrust from J = 1.0618.
    expect(curve.thrustCoefficient.value).toBeCloseTo(0.4547, 4);
    expect(10 * curve.torqueCoefficient.value).toBeCloseTo(0.6754, 4);
    expect(curve.openWater!.greatestAdvanceRatio).toBeCloseTo(1.0618, 4);
    for (const J of [0, 0.3, 0.8, 1]) {
      const point = openWaterOfSeries({ series: B4_70, advanceRatio: J });
      expect(K_T(curve, J)).toSatisfy(relative(point.thrustCoefficient, 1e-12));
      expect(K_Q(curve, J)).toSatisfy(relative(point.torqueCoefficient, 1e-12));
    }
    // The B polynomials are cubic in J.
    expect(curve.openWater!.thrust).toHaveLength(3);
    expect(warnings.map(({ code }) => code)).toContain("propeller.series-yardstick");
  });

  test("a nozzle screw keeps every power of J that it has", () => {
    const series = { family: "ka-4-70-19a", pitchRatio: 1 } as const;
    const { curve } = seriesPropellerCurve({ series });
    const point = openWaterOfSeries({ series, advanceRatio: 0.4 });
    expect(K_T(curve, 0.4)).toSatisfy(relative(point.thrustCoefficient, 1e-12));
    expect(K_Q(curve, 0.4)).toSatisfy(relative(point.torqueCoefficient, 1e-12));
  });
});

const PAIR = {
  thrustCoefficient: { value: 0.27, standardUncertainty: 0.004 },
  torqueCoefficient: { value: 0.033, standardUncertainty: 0.0006 },
  correlation: 0.5,
};

test("measured coefficients keep their value at rest, and the thrust of a measured curve ends where it did", () => {
  const advance = {
    thrustCurve: { coefficients: [0.28, -0.2, -0.12] },
    powerCurve: { coefficients: [0.21, -0.06, -0.13] },
    range: [0, 0.7],
  } as unknown as AdvanceFit;
  const curve = measuredCurve(PAIR, advance);
  expect(curve).toMatchObject(PAIR);
  expect(K_T(curve, 0)).toBe(0.27);
  // Zero of 0.28 - 0.2 J - 0.12 J²: J = (-0.2 + sqrt(0.04 + 0.1344))/0.24 = 0.9067; 0.27/0.28 of the curve anywhere.
  expect(K_T(curve, (-0.2 + Math.sqrt(0.1744)) / 0.24)).toBeCloseTo(0, 14);
  expect(K_Q(curve, 0.5)).toBeCloseTo((0.033 * (0.21 - 0.03 - 0.0325)) / 0.21, 14);
  expect(curve.openWater!.greatestAdvanceRatio).toBe(0.7);
  expect(measuredCurve(PAIR).openWater).toBeUndefined();
});

test("a series lends its shape to measured coefficients", () => {
  const { curve: series } = seriesPropellerCurve({ series: B4_70 });
  const curve = withShapeOf(PAIR, series);
  expect(K_T(curve, 0.5) / 0.27).toBeCloseTo(K_T(series, 0.5) / K_T(series, 0), 13);
  expect(K_Q(curve, 0.5) / 0.033).toBeCloseTo(K_Q(series, 0.5) / K_Q(series, 0), 13);
});

describe("Reynolds number at work", () => {
  const propeller = DrivePropeller.parse({
    ...{ name: "sanded", source: "measured", from: "two mountings", diameter: { value: 0.076 }, mass: 0.02 },
    ahead: { ...PAIR, openWater: { thrust: [-0.3], torque: [-0.02], greatestAdvanceRatio: 0.9 } },
  });
  const air = { kind: "air", temperature: 293.15, pressure: 101325, humidity: 0.5 } as const;
  const fresh = { kind: "fresh", temperature: 288.15 } as const;
  const blade = { bladeCount: 3, chordRatio: 0.28, pitchRatio: 0.9, thicknessRatio: 0.1, roughness: 0 };

  test("at the Reynolds number of the stand nothing changes", () => {
    const turning = { fluid: fresh, rotationRate: 60 };
    const { propeller: carried, factor } = carriedPropeller(propeller, { from: turning, to: turning, blade });
    expect(factor).toMatchObject({ thrust: 1, torque: 1, thrustUncertainty: 0, torqueUncertainty: 0 });
    expect(carried).toEqual(propeller);
  });

  test("from air to water thrust rises and torque falls, with the doubt of the factor on top", () => {
    const from = { fluid: air, rotationRate: 100 };
    const { propeller: carried, factor } = carriedPropeller(propeller, {
      from,
      to: { fluid: fresh, rotationRate: 60 },
      blade,
    });
    const { thrustCoefficient: before } = propeller.ahead;
    const { thrustCoefficient: after, openWater, correlation } = carried.ahead;
    expect(factor.thrust).toBeGreaterThan(1);
    expect(factor.torque).toBeLessThan(1);
    expect(after.value).toBeCloseTo(before.value * factor.thrust, 14);
    const relativeBefore = before.standardUncertainty / before.value;
    expect((after.standardUncertainty / after.value) ** 2).toBeCloseTo(
      relativeBefore ** 2 + factor.thrustUncertainty ** 2,
      14,
    );
    // Scaled as a whole: the thrust ends at the same advance ratio.
    expect(openWater!.thrust[0]! / after.value).toBeCloseTo(-0.3 / before.value, 13);
    expect(correlation).toBeGreaterThan(0);
    expect(correlation).toBeLessThan(0.5);
  });

  test("a copy of another size turns at the tip speed of the first, and says what it was scaled from", () => {
    const from = { fluid: fresh, rotationRate: 60 };
    const { propeller: scaled, reynolds } = scaledPropeller(
      propeller,
      { value: 0.114, standardUncertainty: 0.0001 },
      { from, to: { fluid: fresh }, blade },
    );
    expect(scaled).toMatchObject({
      source: "scaled",
      from: "scaled from 76 mm; two mountings",
      diameter: { value: 0.114 },
    });
    expect(scaled.mass).toBeUndefined();
    // Equal tip speed: the Reynolds number grows with the size.
    expect(reynolds.target! / reynolds.measured!).toBeCloseTo(1.5, 12);
    const same = scaledPropeller(propeller, propeller.diameter, { from, to: { fluid: fresh }, blade });
    expect(same.propeller.ahead).toEqual(propeller.ahead);
  });
});

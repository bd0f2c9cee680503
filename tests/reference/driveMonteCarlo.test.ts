import { describe, expect, test } from "vitest";
import { driveMonteCarlo } from "../../shared/drive/driveMonteCarlo.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { DriveRequest, type DriveRequestInput } from "../../shared/model/drive.ts";
import { DriveMonteCarlo } from "../../shared/model/driveMonteCarlo.ts";
import { relative } from "../relative.ts";
import { driveRequest } from "../unit/driveRequest.ts";

const COUPLED = {
  ...{ speedConstant: (500 * 2 * Math.PI) / 60, motorResistance: 0.1, noLoadCurrent: 0.6, noLoadCurrentSlope: 5e-4 },
  ...{ heat: { surroundings: 285.15, resistanceTemperature: 298.15, thermalResistance: 1.6 } },
  ...{ wetTorque: { coefficient: 2.5e-7, exponent: 1.85 }, gearRatio: 1.5, gearEfficiency: 0.95 },
  ...{ controllerResistance: 0.01, freewheelVoltage: 0.7, switchingLoss: 0.02, standbyPower: 0.4 },
  ...{ supplyVoltage: 16, supplyResistance: 0.15, hotelPower: 12, thrusters: 2 },
  ...{ diameter: 0.07, thrustCoefficient: 0.3, torqueCoefficient: 0.035, density: 998.6, throttle: 1 },
  uncertainties: {
    ...{ speedConstant: 1, motorResistance: 0.006, thermalResistance: 0.4, wetTorque: 0.5e-7 },
    ...{ supplyResistance: 0.03, thrustCoefficient: 0.012, torqueCoefficient: 0.0015 },
  },
  correlations: [{ of: "thrustCoefficient", and: "torqueCoefficient", coefficient: 0.8 }],
} satisfies DriveRequestInput;

/**
 * Drawn outside this project: numpy 2.4.6 `default_rng(11).multivariate_normal`, 100,000 draws, each solved with scipy
 * 1.17.1 `brentq` over the motor speed; mean, standard deviation, and 2.5 % and 97.5 % points by `numpy.quantile`.
 */
const DRAWN = {
  thrust: { mean: 28.094929266736777, u: 2.2137442366989846, ends: [24.181151500537673, 32.814127739875225] },
  motorCurrent: { mean: 11.066272825476592, u: 0.8409376428824492, ends: [9.577051928982094, 12.869782227500941] },
  windingTemperature: { mean: 322.9828094407127, u: 10.92659636050763, ends: [303.2364904366043, 346.26937299328415] },
  supplyVoltage: { mean: 12.570174890332538, u: 0.5098136189119036, ends: [11.632858595829877, 13.634409466758504] },
} as const;

describe("a fully coupled point with correlated coefficients", () => {
  const request = DriveRequest.parse(COUPLED);
  const found = driveMonteCarlo(request, { draws: 40_000, seed: 3 });

  test.each(Object.entries(DRAWN))("the draws of the %s are those of numpy and scipy", (quantity, outside) => {
    const { mean, standardUncertainty: u, interval95 } = found.results.find((one) => one.quantity === quantity)!;
    // A mean of 40,000 draws is good to u/200, a standard deviation to 0.4 %, a 2.5 % point to u/75.
    expect(Math.abs(mean - outside.mean)).toBeLessThan(0.02 * u);
    expect(u).toSatisfy(relative(outside.u, 0.015));
    interval95.forEach((end, i) => {
      expect(Math.abs(end - outside.ends[i]!)).toBeLessThan(0.05 * u);
    });
  });

  test.each(Object.entries(DRAWN))("the first order of the %s is near", (quantity, { u }) => {
    const { uncertainties } = operatingPoint(request);
    expect(uncertainties![quantity as keyof typeof DRAWN]!.standardUncertainty).toSatisfy(relative(u, 0.04));
  });

  test("the answer fits its document, no draw is lost, and the same seed gives the same numbers", () => {
    expect(DriveMonteCarlo.parse(found)).toEqual(found);
    expect([found.used, found.collapsed, found.beyondCurve, found.notPhysical, found.warnings]).toEqual([
      40_000,
      0,
      0,
      0,
      [],
    ]);
    const [once, again] = [1, 1].map((seed) => driveMonteCarlo(request, { draws: 1000, seed }));
    expect(again).toEqual(once);
  });
});

/** T = K_T ρ n² D⁴ with all else exact is linear in K_T: normal, and the first order is exact (JCGM 101:2008, 5.11.2). */
test("in the linear case the draws bear out the first order", () => {
  const request = driveRequest({ uncertainties: { thrustCoefficient: 0.012 } });
  const { results } = driveMonteCarlo(request, { draws: 60_000, seed: 5 });
  expect(results.map(({ quantity }) => quantity)).toEqual(["thrust", "thrustPerPower"]);
  for (const { agrees, settled, standardUncertainty, quantity } of results) {
    const expected = operatingPoint(request).uncertainties![quantity]!.standardUncertainty;
    expect(standardUncertainty).toSatisfy(relative(expected, 0.01));
    expect([agrees, settled]).toEqual([true, true]);
  }
});

test("next to the collapse of the supply the draws are lopsided, some are lost, and both are told", () => {
  const edge = driveRequest({
    ...{ supplyResistance: 0.6, hotelPower: 90, throttle: 0.5, thrusters: 1 },
    uncertainties: { supplyResistance: 0.05 },
  });
  const { used, collapsed, warnings, results } = driveMonteCarlo(edge, { draws: 5000, seed: 2 });
  expect(collapsed).toBeGreaterThan(50);
  expect(used + collapsed).toBe(5000);
  expect(warnings.map(({ code }) => code)).toEqual(["drive.draws-lost"]);
  expect(warnings[0]!.message).toContain(`in ${collapsed} the supply collapses`);
  expect(results.find(({ quantity }) => quantity === "supplyVoltage")!.agrees).toBe(false);
});

test("draws that are not physical are counted, and an exact point is not drawn", () => {
  const vague = driveRequest({ uncertainties: { controllerResistance: 0.008 } });
  // 0.01 Ω less than zero: 10.6 % of a normal distribution lies beyond 1.25 standard deviations.
  const { notPhysical } = driveMonteCarlo(vague, { draws: 10_000, seed: 4 });
  expect(notPhysical / 10_000).toBeCloseTo(0.1056, 2);
  expect(() => driveMonteCarlo(driveRequest(), { draws: 1000, seed: 1 })).toThrow(/No input of the point is uncertain/);
  expect(() => driveMonteCarlo(vague, { draws: 10, seed: 1 })).toThrow(/number of draws/);
});

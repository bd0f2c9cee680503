import { expect, test } from "vitest";
import { meritAtRest } from "../../shared/drive/meritDoubt.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { withinLimits } from "../../shared/drive/withinLimits.ts";
import { DriveRequest } from "../../shared/model/drive.ts";
import {
  extrapolationInWords,
  isBeyondMeasured,
  powerExtrapolationInWords,
} from "../../shared/propeller/beyondMeasured.ts";

const REQUEST = DriveRequest.parse({
  ...{ speedConstant: 60, motorResistance: 0.1, noLoadCurrent: 0.5, supplyVoltage: 14.8, supplyResistance: 0.04 },
  ...{ thrustCoefficient: 0.25, torqueCoefficient: 0.03, diameter: 0.076, density: 1000, throttle: 1 },
});

test("past a limit of a part the most within it is told, in one sentence", () => {
  const free = operatingPoint(REQUEST);
  const supplyCurrent = 0.5 * free.supplyCurrent;
  const request = { ...REQUEST, limits: { supplyCurrent } };
  const within = withinLimits("sanded", request, operatingPoint(request))!;
  expect(within.point!.supplyCurrent).toBeCloseTo(supplyCurrent, 6);
  expect(within.throttle).toBeLessThan(1);
  expect(within.sentence).toMatch(
    /^“sanded” at 100\u202f% throttle is past what its parts allow: supply current [\d.]+ A \(at most [\d.]+ A\)\. Within the limits it pulls [\d.]+\u202fN at \d+\u202f% throttle, drawing [\d.]+\u202fA\.$/,
  );
});

test("within its limits nothing is told", () => {
  expect(withinLimits("sanded", REQUEST, operatingPoint(REQUEST))).toBeNull();
  const request = { ...REQUEST, limits: { supplyCurrent: 1000 } };
  expect(withinLimits("sanded", request, operatingPoint(request))).toBeNull();
});

test("a rate or power beyond what was measured is told, one that only scatters about it is not", () => {
  expect([isBeyondMeasured(40.5, 40), isBeyondMeasured(50, 40)]).toEqual([false, true]);
  expect(extrapolationInWords([{ name: "a", rotationRate: 50, measuredRate: 40 }])).toBe(
    "Extrapolated: “a” turns at 3000\u202frpm, measured up to 2400\u202frpm.",
  );
  expect(extrapolationInWords([{ name: "a", rotationRate: 30, measuredRate: 40 }])).toBe("");
  expect([powerExtrapolationInWords(100, 60), powerExtrapolationInWords(100, null)]).toEqual([
    "extrapolated, as no more than 60.0\u202fW at the shaft was measured",
    "",
  ]);
});

test("the merit at rest has the doubt of both coefficients, less what they share", () => {
  // By hand: 1.5 × 2 % and 3 % with r = 0.5: sqrt(9 + 9 − 2 × 0.5 × 9) % = 3 %. JCGM 100:2008, eq. 16.
  const request = {
    ...REQUEST,
    uncertainties: { thrustCoefficient: 0.02 * 0.25, torqueCoefficient: 0.03 * 0.03 },
    correlations: [{ of: "thrustCoefficient", and: "torqueCoefficient", coefficient: 0.5 } as const],
  };
  const point = operatingPoint(request);
  const { value, standardUncertainty } = meritAtRest(request, point)!;
  expect(value).toBe(point.efficiencies.propeller);
  expect(standardUncertainty / value).toBeCloseTo(0.03, 12);
  expect(meritAtRest(REQUEST, point)).toBeNull();
});

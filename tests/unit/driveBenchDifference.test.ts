import { expect, test } from "vitest";
import { benchDifference } from "../../shared/drive/benchDifference.ts";
import { DriveRequest } from "../../shared/model/drive.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";

const REQUEST = DriveRequest.parse({
  ...{ speedConstant: 60, motorResistance: 0.1, noLoadCurrent: 0.5, supplyVoltage: 14.8, supplyResistance: 0 },
  ...{ thrustCoefficient: 0.25, torqueCoefficient: 0.03, diameter: 0.076, density: 1000, throttle: 1 },
});
const RATES = [15, 20, 25, 30, 35];

/** Readings of a drive that draws `factor(n)` times what the model gives, each known to 1 %. */
function readings(factor: (rate: number) => number) {
  const at = (power: number, rate: number) => ({
    ...{ used: true, rotationRate: uncertain(rate, 0), voltage: uncertain(14.8, 0), thrust: uncertain(1, 0) },
    electricalPower: uncertain(power, 0.01 * power),
  });
  const asModel = benchDifference(
    REQUEST,
    RATES.map((rate) => at(1, rate)),
  ).points;
  return asModel.map(({ predictedPower, rotationRate }) => at(factor(rotationRate) * predictedPower, rotationRate));
}

test("a drive that draws what the model gives shows no difference", () => {
  const { ratio, agreement, sentence } = benchDifference(
    REQUEST,
    readings(() => 1),
  );
  expect(ratio!.value).toBeCloseTo(1, 9);
  expect(agreement).toMatchObject({ degreesOfFreedom: 4, probability: expect.closeTo(1, 9) });
  expect(sentence).toContain("no difference beyond the doubt of both");
});

test("a ratio that changes from plateau to plateau is not averaged away", () => {
  // Mean 1, so the average alone would tell nothing: (0.1² + 0.05²)·2/0.01² about, by the relative doubts.
  const falling = (rate: number) => 1 + 0.01 * (25 - rate);
  const { agreement, sentence } = benchDifference(REQUEST, readings(falling));
  expect(agreement!.chiSquare).toBeGreaterThan(200);
  expect(agreement!.probability).toBeLessThan(1e-6);
  expect(sentence).toMatch(
    /on average, but no one ratio holds for all: it goes from 0\.900 ± 0\.018 at 2100 rpm to 1\.100 ± 0\.022 at 900\.0 rpm/,
  );
  expect(sentence).toContain("no-load current");
  expect(sentence).not.toContain("no difference");
  const rising = benchDifference(
    REQUEST,
    readings((rate) => 2 - falling(rate)),
  );
  expect(rising.sentence).toContain("resistance or torque coefficient that is too small");
});

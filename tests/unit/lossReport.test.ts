import { describe, expect, test } from "vitest";
import { LossReportRequest } from "../../shared/model/lossReport.ts";
import { longReport, shortReport } from "../../shared/propeller/losses/lossInWords.ts";
import { lossReport } from "../../shared/propeller/losses/lossReport.ts";
import { seriesName } from "../../shared/propeller/losses/seriesName.ts";
import { comparableSeries } from "../../shared/propeller/series/comparableSeries.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { FRESH, GEOMETRY, measuredPoint, ROTATION_RATE, responseAt } from "./finishCase.ts";

const reportOf = (thrust: number, torque: number, more: object = {}) => {
  const { thrustCoefficient, torqueCoefficient } = measuredPoint({ advanceRatio: 0, thrust, torque });
  const request = LossReportRequest.parse({
    name: "Sanded",
    blade: { given: "geometry", geometry: GEOMETRY },
    fluid: { kind: "fresh", temperature: 291.15 },
    rotationRate: ROTATION_RATE,
    measured: { thrustCoefficient, torqueCoefficient },
    ...more,
  });
  return lossReport({ ...request, fluid: FRESH });
};
const answer = responseAt([0])({ roughness: 0, liftFactor: 0.9, dragFactor: 2 })!;
const { thrustCoefficient: T, torqueCoefficient: Q } = answer.points[0]!;

describe("where the shaft power goes", () => {
  test("losses are in proportion to those of the blade elements that make the measurement, greatest first", () => {
    const { shares, sharesFrom } = reportOf(T, Q);
    expect(sharesFrom).toBe("fitted");
    const [first] = shares;
    for (const { cause, share } of shares) {
      expect(share.value / first!.share.value).toBeCloseTo(answer.power[cause] / answer.power[first!.cause], 4);
    }
    expect(shares.map(({ share }) => share.value)).toEqual(
      shares.map(({ share }) => share.value).sort((a, b) => b - a),
    );
  });

  test("ideal and losses make the whole", () => {
    const { shares, staticMerit } = reportOf(T, Q);
    expect(shares.reduce((sum, { share }) => sum + share.value, staticMerit.value)).toBeCloseTo(1, 6);
  });

  test("a measurement no surface makes gets losses scaled to its merit, and says so", () => {
    const { shares, sharesFrom, staticMerit, warnings } = reportOf(0.6 * T, 4 * Q);
    expect(sharesFrom).toBe("scaled");
    expect(shares.reduce((sum, { share }) => sum + share.value, staticMerit.value)).toBeCloseTo(1, 9);
    expect(warnings.map(({ code }) => code)).toContain("propeller.loss-scaled");
  });

  test("above the ideal there is nothing to split, and the report says that no open propeller can do it", () => {
    const { shares, sharesFrom, long, warnings } = reportOf(2.2 * T, Q);
    expect([shares, sharesFrom]).toEqual([[], "none"]);
    expect(long).toContain("No open propeller can do that");
    expect(warnings.map(({ code }) => code)).toContain("propeller.merit-above-ideal");
  });
});

describe("against a good propeller", () => {
  test("a propeller that makes what the series makes can not be told from it", () => {
    const series = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 } as const;
    const { thrustCoefficient, torqueCoefficient } = openWaterOfSeries({ series, advanceRatio: 0 });
    const { series: against, short } = reportOf(thrustCoefficient, torqueCoefficient, { series });
    expect(against!.thrustRatio.value).toBeCloseTo(1, 9);
    expect(against!.powerRatio.value).toBeCloseTo(1, 9);
    expect(against!.thrustAtEqualPower.value).toBeCloseTo(1, 9);
    expect(short).toContain("no difference can be claimed");
  });

  test("the comparable screw of blades made from the series is that screw", () => {
    const { blades, areaRatio, pitchRatio } = comparableSeries(GEOMETRY)!;
    expect(blades).toBe(3);
    expect(pitchRatio).toBeCloseTo(0.9, 6);
    expect(areaRatio).toBeCloseTo(0.5, 9);
  });

  test("a blade count that the series has not is not compared", () => {
    expect(comparableSeries({ ...GEOMETRY, bladeCount: 8 })).toBeNull();
  });

  test("a nozzle screw has its name", () => {
    expect(seriesName({ family: "ka-4-70-19a", pitchRatio: 1 })).toBe("a Ka 4-70 screw of P/D 1.0 in nozzle 19A");
  });
});

const NUMBERS = {
  staticMerit: uncertain(0.46, 0.015),
  thrustOverIdeal: uncertain(0.6, 0.013),
  series: {
    name: "a smooth B-series screw of 3 blades, P/D 0.90 and area ratio 0.50",
    staticMerit: 0.62,
    thrustRatio: uncertain(0.9, 0.01),
    powerRatio: uncertain(1.2, 0.02),
    thrustAtEqualPower: uncertain(0.81, 0.02),
  },
  shares: [
    { cause: "profile", share: uncertain(0.31, 0.03) },
    { cause: "swirl", share: uncertain(0.12, 0.01) },
  ],
  sharesFrom: "fitted",
} as const;

describe("the words", () => {
  const told = { ...NUMBERS, shares: [...NUMBERS.shares] };

  test("short", () => {
    expect(shortReport("Sanded", told)).toMatchInlineSnapshot(
      `"Sanded has a static merit of 0.460 ± 0.029: from its shaft power it makes 0.600 ± 0.025 of the thrust that momentum theory allows an open disc of its size. At equal shaft power it makes 0.81 ± 0.04 times the thrust of a smooth B-series screw of 3 blades, P/D 0.90 and area ratio 0.50, so a good propeller of this pitch has more to give."`,
    );
  });

  test("long", () => {
    expect(longReport("Sanded", told)).toMatchInlineSnapshot(
      `"Sanded has a static merit of 0.460 ± 0.029: from its shaft power it makes 0.600 ± 0.025 of the thrust that momentum theory allows an open disc of its size. At equal shaft power it makes 0.81 ± 0.04 times the thrust of a smooth B-series screw of 3 blades, P/D 0.90 and area ratio 0.50, so a good propeller of this pitch has more to give. At equal rotation rate it makes 0.900 ± 0.020 times that propeller's thrust for 1.20 ± 0.04 times its power. Of the shaft power an ideal disc would need 46.0 ± 2.9 %; the rest goes, by blade elements that make the measured thrust and torque, into drag of the blade sections 31 ± 6 %, rotation left in the stream 12.0 ± 2.0 %. The greatest loss is drag of the blade sections: a smoother surface, thinner edges and less blade area act on it, each at a price elsewhere, so measure again."`,
    );
  });

  test("a loss that may be as great within its doubt is named with the greatest", () => {
    const close = { cause: "swirl", share: uncertain(0.29, 0.03) } as const;
    const long = longReport("Sanded", { ...told, shares: [NUMBERS.shares[0], close] });
    expect(long).toContain("drag of the blade sections or, within the doubt, rotation left in the stream");
  });

  test("better than the series is doubted, not praised", () => {
    const series = { ...NUMBERS.series, thrustAtEqualPower: uncertain(1.2, 0.02) };
    expect(shortReport("Sanded", { ...told, series })).toContain("check calibration and pitch before believing it");
  });

  test("without a series and without shares only the ideal is compared with", () => {
    const bare = longReport("Sanded", { ...told, series: null, shares: [] });
    expect(bare).toBe(shortReport("Sanded", { ...told, series: null }));
  });
});

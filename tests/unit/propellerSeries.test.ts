import { describe, expect, test } from "vitest";
import { BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { goldenMaximum } from "../../shared/numeric/goldenSection.ts";
import { advanceRatioOfDuty } from "../../shared/propeller/dutyAdvanceRatio.ts";
import { firstZero } from "../../shared/propeller/firstZero.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesCurve } from "../../shared/propeller/series/seriesCurve.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";

const B3_50 = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 } as const;

const problemOf = (code: string, where: string) =>
  expect.objectContaining({ problem: expect.objectContaining({ code, where }) });

describe("the range of a series", () => {
  test.each([
    { name: "pitch ratio below", series: { ...B3_50, pitchRatio: 0.49 }, where: "series.pitchRatio" },
    { name: "pitch ratio above", series: { ...B3_50, pitchRatio: 1.41 }, where: "series.pitchRatio" },
    { name: "area ratio below", series: { ...B3_50, areaRatio: 0.29 }, where: "series.areaRatio" },
    { name: "area ratio above", series: { ...B3_50, areaRatio: 1.06 }, where: "series.areaRatio" },
    { name: "blades", series: { ...B3_50, blades: 8 }, where: "series.blades" },
    { name: "nozzle pitch ratio", series: { family: "ka-4-70-19a", pitchRatio: 0.55 }, where: "series.pitchRatio" },
  ] as const)("$name is refused, and with the flag computed and told by the same field", ({ series, where }) => {
    expect(() => openWaterOfSeries({ series, advanceRatio: 0 })).toThrow(problemOf("propeller.series-range", where));
    const { warnings, thrustCoefficient } = openWaterOfSeries({ series, advanceRatio: 0, outsideRange: true });
    expect(warnings[0]).toMatchObject({ code: "propeller.series-range", where });
    expect(Number.isFinite(thrustCoefficient)).toBe(true);
  });

  test.each([-0.01, 1.5])(
    "an advance ratio of %d lies outside, and the sentence says up to where it goes",
    (advanceRatio) => {
      expect(() => openWaterOfSeries({ series: B3_50, advanceRatio })).toThrow(
        /Needed: 0 to 0\.98\d\d\. Stay inside, or ask/,
      );
      const point = openWaterOfSeries({ series: B3_50, advanceRatio, outsideRange: true });
      expect(point.warnings.at(-1)).toMatchObject({ code: "propeller.series-range", where: "advanceRatio" });
    },
  );

  test("the ends of the range are inside", () => {
    for (const pitchRatio of [0.5, 1.4]) {
      for (const areaRatio of [0.3, 1.05]) {
        const { warnings } = openWaterOfSeries({ series: { ...B3_50, pitchRatio, areaRatio }, advanceRatio: 0 });
        expect(warnings.map(({ code }) => code)).not.toContain("propeller.series-range");
      }
    }
  });

  test.each([
    { blades: 2, areaRatio: 0.4, isTested: false },
    { blades: 2, areaRatio: 0.3, isTested: true },
    { blades: 3, areaRatio: 0.9, isTested: false },
    { blades: 4, areaRatio: 0.9, isTested: true },
    { blades: 7, areaRatio: 0.5, isTested: false },
  ])(
    "$blades blades with an area ratio of $areaRatio are told as untested: not $isTested",
    ({ isTested, ...screw }) => {
      const { warnings } = openWaterOfSeries({ series: { ...B3_50, ...screw }, advanceRatio: 0 });
      const codes = warnings.map(({ code }) => code);
      expect(codes).toEqual([...(isTested ? [] : ["propeller.series-member"]), "propeller.series-yardstick"]);
    },
  );

  test("whatever the Reynolds number, its numbers are called those of a smooth, well-made propeller", () => {
    for (const reynolds of [5e4, 2e6, 1e8]) {
      const { warnings } = openWaterOfSeries({ series: B3_50, advanceRatio: 0.3, reynolds });
      expect(warnings.map(({ message }) => message).join()).toContain("those of a smooth, well-made propeller");
    }
  });

  test("below Re 2e6 the numbers stay those of 2e6 and are called a yardstick; nothing is extrapolated", () => {
    const small = openWaterOfSeries({ series: B3_50, advanceRatio: 0.3, reynolds: 5e4 });
    const unstated = openWaterOfSeries({ series: B3_50, advanceRatio: 0.3 });
    expect(small.thrustCoefficient).toBe(unstated.thrustCoefficient);
    expect(small.torqueCoefficient).toBe(unstated.torqueCoefficient);
    expect(small.warnings[0]!.message).toContain(
      "smooth, well-made propeller of full size: a yardstick, not a forecast",
    );
  });

  test("beyond Re 2e9 the correction is computed only where asked for", () => {
    const beyond = { series: B3_50, advanceRatio: 0.3, reynolds: 3e9 };
    expect(() => openWaterOfSeries(beyond)).toThrow(problemOf("propeller.series-range", "reynolds"));
    const { warnings } = openWaterOfSeries({ ...beyond, outsideRange: true });
    expect(warnings.map(({ code }) => code)).toEqual(["propeller.series-range", "propeller.series-yardstick"]);
  });

  test("far outside, a point better than momentum theory allows is called an artefact of the polynomials", () => {
    const series = { ...B3_50, blades: 4, areaRatio: 0.1, pitchRatio: 2.5 };
    const { warnings } = openWaterOfSeries({ series, advanceRatio: 0.1, outsideRange: true });
    expect(warnings.map(({ code }) => code)).toContain("propeller.series-artefact");
  });

  test("where there is no propeller at all the curve is refused with the reason", () => {
    const series = { ...B3_50, areaRatio: 2, pitchRatio: 0.05 };
    const request = { series, points: 5, outsideRange: true };
    expect(() => seriesCurve(request)).toThrow(problemOf("propeller.series-no-thrust", "series"));
  });

  test("the sections of a screw outside the range are refused likewise", () => {
    const series = { ...B3_50, areaRatio: 1.2 };
    expect(() => seriesGeometry({ series, diameter: 0.1, outsideRange: false })).toThrow(/area ratio of 1\.20/);
    expect(seriesGeometry({ series, diameter: 0.1, outsideRange: true }).stations.length).toBeGreaterThan(5);
  });
});

describe("the best pitch", () => {
  const pitchOf = (request: object) =>
    bestPitch(
      BestPitchRequest.parse({
        series: { family: "wageningen-b", blades: 3, areaRatio: 0.5 },
        density: 998.6,
        ...request,
      }),
    );

  test("at the edge of the range it says so, and what lies beyond", () => {
    const result = pitchOf({
      duty: { given: "thrust", thrust: 5 },
      fixed: { given: "diameter", diameter: 0.076 },
      advanceSpeed: 2.5,
    });
    expect(result).toMatchObject({ state: "found", kind: "edge", best: { pitchRatio: 1.4 } });
    expect(result.warnings.map(({ code }) => code)).toContain("propeller.pitch-at-edge");
    expect(result.warnings.at(-1)!.message).toContain("upper edge, 1.40");
  });

  // Helma, Surprising behaviour of the Wageningen B-screw series polynomials, Journal of Marine Science and Engineering
  // 8 (2020) 211: few blades and a high pitch have further optima that come from the polynomials.
  test("of several optima with two blades the first is kept, and the further one told", () => {
    const result = pitchOf({
      series: { family: "wageningen-b", blades: 2, areaRatio: 0.7 },
      duty: { given: "thrust", thrust: 5 },
      fixed: { given: "diameter", diameter: 0.1 },
      advanceSpeed: 1,
    });
    if (result.state === "failed") throw new Error(result.reason);
    expect(result.kind).toBe("optimum");
    expect(result.best.pitchRatio).toBeLessThan(1);
    expect(result.warnings.map(({ code }) => code)).toContain("propeller.second-optimum");
    const high = result.candidates.at(-1)!;
    expect(high.shaftPower).toBeLessThan(result.best.shaftPower);
  });

  test("a duty beyond every pitch at a given diameter and rotation rate fails with what the range gives", () => {
    const result = pitchOf({
      duty: { given: "thrust", thrust: 900 },
      fixed: { given: "both", diameter: 0.076, rotationRate: 45 },
    });
    expect(result.state).toBe("failed");
    expect(result).toHaveProperty(
      "reason",
      expect.stringMatching(/give a thrust of 1\d\.\d to 3\d\.\d N, and 900 N is asked for/),
    );
  });

  test("a power that no pitch takes up while it still pushes fails with that reason", () => {
    const result = pitchOf({
      duty: { given: "shaftPower", shaftPower: 1e-6 },
      fixed: { given: "diameter", diameter: 0.5 },
      advanceSpeed: 20,
    });
    expect(result).toMatchObject({ state: "failed", reason: expect.stringContaining("takes up this power") });
  });

  test("the walk over the pitch is given for a picture, every candidate doing the duty", () => {
    const result = pitchOf({
      duty: { given: "thrust", thrust: 25 },
      fixed: { given: "diameter", diameter: 0.076 },
      advanceSpeed: 1.5,
    });
    if (result.state === "failed") throw new Error(result.reason);
    expect(result.candidates).toHaveLength(46);
    for (const { thrust } of result.candidates) expect(thrust).toBeCloseTo(25, 9);
  });

  // Mean chord of Ka 4-70 by hand: 0.70 π/4 D² = 4 c (1 - 0.167) D/2, c = 0.330 D; Re of 34.15 rev/s on 76 mm: 0.0251 ·
  // 6.115/1e-6.
  test("in a nozzle the Reynolds number rests on the mean chord, and a small one is called a yardstick too", () => {
    const result = pitchOf({
      series: { family: "ka-4-70-19a" },
      duty: { given: "thrust", thrust: 25 },
      fixed: { given: "diameter", diameter: 0.076 },
      kinematicViscosity: 1e-6,
    });
    if (result.state === "failed") throw new Error(result.reason);
    expect(result.kind).toBe("optimum");
    expect(result.reynolds! / 153_400).toBeCloseTo(1, 2);
    expect(result.warnings.map(({ code }) => code)).toEqual(["propeller.series-yardstick"]);
  });
});

describe("searching a curve", () => {
  test("the first zero of a falling curve is found, and its absence told", () => {
    expect(firstZero((J) => 0.5 - J)).toBeCloseTo(0.5, 12);
    expect(firstZero(() => 1)).toBeNull();
    expect(firstZero((J) => J - 1)).toBeNull();
  });

  // K(J) = c J² with K = 0.3 at every J: J = sqrt(0.3/c).
  test.each([1, 1e6, 1e30])("a duty of %d times J² is met exactly, however small the advance ratio", (c) => {
    const J = advanceRatioOfDuty(() => 0.3, c, 2)!;
    expect(J / Math.sqrt(0.3 / c)).toBeCloseTo(1, 10);
  });

  test("a duty that no advance ratio meets gives none", () => {
    expect(advanceRatioOfDuty(() => 0, 1, 2)).toBeNull();
    expect(advanceRatioOfDuty(() => 0.3, Number.POSITIVE_INFINITY, 2)).toBeNull();
  });

  // x(1 - x) has its maximum 1/4 at 1/2; sin x its maximum 1 at π/2.
  test("golden section finds a maximum, and refuses what is no number", () => {
    const { at, value, converged } = goldenMaximum((x) => x * (1 - x), 0, 1);
    expect(at).toBeCloseTo(0.5, 7);
    expect(value).toBeCloseTo(0.25, 14);
    expect(converged).toBe(true);
    expect(goldenMaximum(Math.sin, 0, 3).at).toBeCloseTo(Math.PI / 2, 7);
    expect(goldenMaximum((x) => x, 0, 1, { maximumSteps: 3 }).converged).toBe(false);
    expect(() => goldenMaximum(() => Number.NaN, 0, 1)).toThrow(/a finite number/);
  });
});

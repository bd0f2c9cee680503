import fc from "fast-check";
import { expect, test } from "vitest";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesCurve } from "../../shared/propeller/series/seriesCurve.ts";
import { between, expectFinite, nozzleScrew, testedScrew } from "./propellerCases.ts";

test("inside the tests every series propeller pushes less with speed, stops, and never beats momentum theory", () => {
  fc.assert(
    fc.property(fc.oneof(testedScrew, nozzleScrew), (propeller) => {
      const { points, peak } = seriesCurve({ series: propeller, points: 30, outsideRange: false });
      expectFinite(points);
      for (let i = 1; i < points.length - 1; i++) {
        expect(points[i]!.thrustCoefficient).toBeLessThan(points[i - 1]!.thrustCoefficient);
        expect(points[i]!.efficiency!).toBeLessThanOrEqual(points[i]!.idealEfficiency ?? 1);
        expect(points[i]!.efficiency!).toBeLessThanOrEqual(peak.efficiency + 1e-9);
      }
    }),
  );
});

test("outside the tests, where asked for, a point is finite and flagged, or refused with its reason", () => {
  const wild = fc.record({
    family: fc.constant("wageningen-b" as const),
    blades: fc.integer({ min: 2, max: 7 }),
    areaRatio: between(0.01, 2),
    pitchRatio: between(0.01, 3),
  });
  fc.assert(
    fc.property(wild, between(-0.5, 2), between(1e3, 1e11), (propeller, advanceRatio, reynolds) => {
      const point = openWaterOfSeries({ series: propeller, advanceRatio, reynolds, outsideRange: true });
      expectFinite(point);
      const isInside =
        propeller.areaRatio >= 0.3 &&
        propeller.areaRatio <= 1.05 &&
        propeller.pitchRatio >= 0.5 &&
        propeller.pitchRatio <= 1.4;
      if (!isInside) expect(point.warnings.map(({ code }) => code)).toContain("propeller.series-range");
    }),
  );
});

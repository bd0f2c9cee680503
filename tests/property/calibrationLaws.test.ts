import fc from "fast-check";
import { expect, test } from "vitest";
import { calibrationLine } from "../../shared/calibration/calibrationLine.ts";
import { calibrationOf } from "../../shared/calibration/calibrationOf.ts";
import { type CalibrationPoint, Instrument } from "../../shared/model/instrument.ts";
import { relativeError as relative } from "../relative.ts";

const instrument = (points: readonly CalibrationPoint[]) =>
  Instrument.parse({
    name: "cell",
    role: "thrust",
    calibration: { kind: "deadWeights", appliedUnit: "g", readingUnit: "counts", points, appliedTolerance: 0.003 },
  });

/** Up and down again through weights that differ, with readings about a line. */
const tables = fc
  .record({
    loads: fc.uniqueArray(fc.integer({ min: 0, max: 50 }), { minLength: 4, maxLength: 12 }),
    slope: fc.double({ min: 0.2, max: 50, noNaN: true }),
    zero: fc.double({ min: -1000, max: 1000, noNaN: true }),
    noise: fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 24, maxLength: 24 }),
  })
  .map(({ loads, slope, zero, noise }) => {
    const up = loads.sort((a, b) => a - b).map((load) => load * 100);
    const all = [...up, ...up.slice(0, -1).reverse()];
    const read = (applied: number, i: number) => zero + slope * applied + slope * noise[i]! * 0.013;
    return { slope, zero, points: all.map((applied, i) => ({ applied, reading: read(applied, i) })) };
  });

test("scaling what was applied scales the factor and leaves its relative uncertainty", () => {
  fc.assert(
    fc.property(tables, fc.constantFrom(0.5, 2, 10), ({ points }, scale) => {
      const before = calibrationOf(instrument(points));
      const after = calibrationOf(
        instrument(points.map(({ applied, reading }) => ({ applied: applied * scale, reading }))),
      );
      expect(relative(after.factor, scale * before.factor)).toBeLessThan(1e-9);
      expect(relative(after.relativeUncertainty, before.relativeUncertainty)).toBeLessThan(1e-6);
    }),
  );
});

test("the order of the points matters to hysteresis alone", () => {
  fc.assert(
    fc.property(tables, ({ points }) => {
      const before = calibrationLine(points);
      const after = calibrationLine(points.toSorted((a, b) => a.reading - b.reading));
      expect(relative(after.slope, before.slope)).toBeLessThan(1e-9);
      expect(relative(after.slopeStandardError, before.slopeStandardError)).toBeLessThan(1e-6);
      expect(Math.abs(after.intercept - before.intercept)).toBeLessThan(
        1e-9 * (before.span + Math.abs(before.intercept)),
      );
      const sorted = (line: { residuals: readonly number[] }) => line.residuals.toSorted((a, b) => a - b);
      const [a, b] = [sorted(before), sorted(after)];
      a.forEach((residual, i) => void expect(Math.abs(residual - b[i]!)).toBeLessThan(1e-8 * before.span));
    }),
  );
});

test("a perfect line leaves no residual, and no friction, curvature or outlier is seen in it", () => {
  fc.assert(
    fc.property(tables, ({ points, slope, zero }) => {
      const perfect = points.map(({ applied }) => ({ applied, reading: zero + slope * applied }));
      const { findings, factor } = calibrationOf(instrument(perfect));
      expect(findings!.line.residuals.every((residual) => residual === 0)).toBe(true);
      expect(findings!.outliers).toEqual([]);
      expect(findings!.nonlinearity?.partOfSpan ?? 0).toBe(0);
      expect(findings!.hysteresis?.difference).toBeCloseTo(0, 9);
      expect(relative(factor, 9.80665e-3 / slope)).toBeLessThan(1e-9);
    }),
  );
});

test("turning the sign of the readings turns the sign of the factor", () => {
  fc.assert(
    fc.property(tables, ({ points }) => {
      const turned = points.map(({ applied, reading }) => ({ applied, reading: -reading }));
      const [before, after] = [calibrationOf(instrument(points)), calibrationOf(instrument(turned))];
      expect(relative(after.factor, -before.factor)).toBeLessThan(1e-12);
      expect(relative(after.relativeUncertainty, before.relativeUncertainty)).toBeLessThan(1e-9);
    }),
  );
});

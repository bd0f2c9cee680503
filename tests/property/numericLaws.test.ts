import fc from "fast-check";
import { expect, test } from "vitest";
import { effectiveSampleSize } from "../../shared/numeric/autocorrelation.ts";
import { changePoints } from "../../shared/numeric/changePoint.ts";
import { fiellerInterval } from "../../shared/numeric/fieller.ts";
import { holm } from "../../shared/numeric/holm.ts";
import { lineThroughOrigin } from "../../shared/numeric/lineThroughOrigin.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { bracketedRoot } from "../../shared/numeric/rootFinding.ts";
import { straightLine } from "../../shared/numeric/straightLine.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const reading = fc.integer({ min: -10_000, max: 10_000 }).map((digits) => digits / 100);
const readings = (minLength: number, maxLength = 60) => fc.array(reading, { minLength, maxLength });

function expectNear(found: number, expected: number, scale = Math.abs(expected)) {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-9 * scale + 1e-12);
}

test("a level added to every reading moves the mean and leaves the spread", () => {
  fc.assert(
    fc.property(readings(2), fc.integer({ min: -1000, max: 1000 }), (values, level) => {
      const before = moments(values);
      const after = moments(values.map((value) => value + level));
      expectNear(after.mean, before.mean + level, 1100);
      expectNear(after.standardDeviation, before.standardDeviation, 1100);
    }),
  );
});

test("no series is worth more samples than it has, nor less than one", () => {
  fc.assert(
    fc.property(readings(1, 300), (values) => {
      const { effective, inflation } = effectiveSampleSize(values);
      expect(effective).toBeGreaterThanOrEqual(1);
      expect(effective).toBeLessThanOrEqual(values.length);
      expectNear(effective * inflation, values.length);
    }),
  );
});

test("a series read backwards is worth as many samples", () => {
  fc.assert(
    fc.property(readings(2, 100), (values) => {
      expectNear(effectiveSampleSize(values.toReversed()).effective, effectiveSampleSize(values).effective);
    }),
  );
});

/** Least cost over all partitions into segments of at least `shortest`, tried one by one from the start. */
function leastCost(values: readonly number[], shortest: number, penalty: number): number {
  const least = [-penalty];
  for (let end = 1; end <= values.length; end++) {
    least[end] = Number.POSITIVE_INFINITY;
    for (let start = 0; start + shortest <= end; start++) {
      least[end] = Math.min(least[end]!, least[start]! + squares(values.slice(start, end)) + penalty);
    }
  }
  return least[values.length]!;
}

function squares(values: readonly number[]): number {
  return moments(values).variance * (values.length - 1);
}

test("the change points make the penalised sum of squares least, whatever was pruned", () => {
  fc.assert(
    fc.property(readings(4, 40), fc.integer({ min: 1, max: 7 }), between(0, 5000), (values, minimumLength, penalty) => {
      fc.pre(values.length >= 2 * minimumLength);
      const changes = changePoints(values, { minimumLength, penalty });
      const ends = [...changes, values.length];
      const lengths = ends.map((end, i) => end - (ends[i - 1] ?? 0));
      expect(Math.min(...lengths)).toBeGreaterThanOrEqual(minimumLength);
      const sums = ends.map((end, i) => squares(values.slice(ends[i - 1] ?? 0, end)));
      const cost = sums.reduce((sum, value) => sum + value, 0) + penalty * changes.length;
      expectNear(cost, leastCost(values, minimumLength, penalty), 1e6);
    }),
  );
});

test("steps far above the noise are found to the sample, in short logs and in long ones", () => {
  const lengths = fc.array(fc.integer({ min: 100, max: 400 }), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(
      lengths,
      fc.constantFrom(20, 100),
      fc.integer({ min: 1, max: 2 ** 31 - 1 }),
      (parts, shortest, seed) => {
        // Park & Miller's generator, Communications of the ACM 31 (1988) 1192.
        let state = seed;
        const noise = () => {
          state = (state * 16807) % (2 ** 31 - 1);
          return state / 2 ** 31;
        };
        const values = parts.flatMap((length, i) => Array.from({ length }, () => (i % 2) * 50 + noise()));
        const expected = parts.slice(0, -1).map((_, i) => parts.slice(0, i + 1).reduce((sum, part) => sum + part, 0));
        expect(changePoints(values, { minimumLength: shortest })).toEqual(expected);
      },
    ),
  );
});

const points = fc.array(
  fc.record({ x: between(0.5, 50), y: between(-50, 50), ux: between(0.001, 0.5), uy: between(0.01, 2) }),
  { minLength: 3, maxLength: 20 },
);

test("y stretched by a factor stretches the slope and its errors", () => {
  fc.assert(
    fc.property(points, between(0.1, 10), (all, factor) => {
      const x = all.map((p) => p.x);
      const plain = lineThroughOrigin({ x, y: all.map((p) => p.y), uncertaintyY: all.map((p) => p.uy) });
      const stretched = lineThroughOrigin({
        x,
        y: all.map((p) => factor * p.y),
        uncertaintyY: all.map((p) => factor * p.uy),
      });
      expectNear(stretched.slope, factor * plain.slope, factor * 100);
      expectNear(stretched.standardErrorFromUncertainty!, factor * plain.standardErrorFromUncertainty!);
      expectNear(stretched.chiSquared, plain.chiSquared, plain.chiSquared + 1);
    }),
  );
});

test("with doubt in both, no slope close by has a smaller weighted sum of squares", () => {
  const along = fc.array(fc.record({ x: between(1, 50), e: between(-1, 1) }), { minLength: 3, maxLength: 20 });
  fc.assert(
    fc.property(along, between(-3, 3), (all, slope) => {
      const x = all.map((p) => p.x);
      const y = all.map((p) => slope * p.x + p.e);
      const sumAt = (b: number) =>
        all.reduce((sum, _, i) => sum + (y[i]! - b * x[i]!) ** 2 / (1 + (b * 0.02 * x[i]!) ** 2), 0);
      const fit = lineThroughOrigin({ x, y, uncertaintyY: x.map(() => 1), uncertaintyX: x.map((v) => 0.02 * v) });
      expect(fit.converged).toBe(true);
      for (const step of [-1e-4, 1e-4]) expect(sumAt(fit.slope + step)).toBeGreaterThanOrEqual(fit.chiSquared - 1e-12);
    }),
  );
});

test("x and y exchanged turn York's line into its mirror image", () => {
  const along = fc.array(fc.record({ x: between(0, 50), e: between(-1, 1) }), { minLength: 4, maxLength: 20 });
  fc.assert(
    fc.property(along, between(0.5, 3), (all, slope) => {
      const x = all.map((p, i) => p.x + 10 * i);
      const y = all.map((p, i) => slope * x[i]! + p.e);
      const [ux, uy] = [x.map(() => 0.3), x.map(() => 0.7)];
      const straight = straightLine({ x, y, uncertaintyX: ux, uncertaintyY: uy });
      const mirrored = straightLine({ x: y, y: x, uncertaintyX: uy, uncertaintyY: ux });
      expectNear(mirrored.slope, 1 / straight.slope, 1);
      expectNear(mirrored.chiSquared, straight.chiSquared, 1 + straight.chiSquared);
    }),
  );
});

test("Holm's correction never lowers a p-value, keeps their order and stays below Bonferroni's", () => {
  fc.assert(
    fc.property(fc.array(between(0, 1), { minLength: 1, maxLength: 12 }), (p) => {
      const adjusted = holm(p);
      p.forEach((value, i) => {
        expect(adjusted[i]).toBeGreaterThanOrEqual(value);
        expect(adjusted[i]).toBeLessThanOrEqual(Math.min(1, value * p.length));
        p.forEach((other, j) => {
          if (value < other) expect(adjusted[i]).toBeLessThanOrEqual(adjusted[j]!);
        });
      });
    }),
  );
});

test("Fieller's interval holds the ratio and narrows to the plain one for a sure denominator", () => {
  fc.assert(
    fc.property(between(0.1, 10), between(0.1, 10), between(0.001, 0.1), (numerator, denominator, u) => {
      const interval = fiellerInterval({
        numerator,
        denominator,
        varianceNumerator: u * u,
        varianceDenominator: 0,
        coverageFactor: 2,
      })!;
      expectNear(interval[0], (numerator - 2 * u) / denominator, 100);
      expectNear(interval[1], (numerator + 2 * u) / denominator, 100);
    }),
  );
});

test("a root found lies in the bracket and f changes sign within the tolerance round it", () => {
  fc.assert(
    fc.property(between(-5, 5), between(0.1, 20), between(0.1, 20), (root, left, right) => {
      const f = (x: number) => Math.atan(x - root) + (x - root) ** 3;
      const [low, high] = [root - left, root + right];
      const found = bracketedRoot(f, low, high, { relativeTolerance: 1e-10, maximumSteps: 200 });
      expect(found.converged).toBe(true);
      expect(found.root).toBeGreaterThanOrEqual(low);
      expect(found.root).toBeLessThanOrEqual(high);
      expect(Math.abs(found.root - root)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(root)));
    }),
  );
});

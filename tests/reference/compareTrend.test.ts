import { expect, test } from "vitest";
import { trendOf } from "../../shared/compare/trend/trendOf.ts";
import { fiellerInterval } from "../../shared/numeric/fieller.ts";
import { relative } from "../relative.ts";
import { facts } from "../unit/comparePlateaus.ts";
import { run } from "../unit/compareRuns.ts";

/** Invented thrust coefficients of two mountings at each of five pitch ratios. */
const PITCH = [0.6, 0.6, 0.8, 0.8, 1, 1, 1.2, 1.2, 1.4, 1.4];
const K_T = [0.512, 0.52, 0.561, 0.553, 0.588, 0.579, 0.571, 0.58, 0.549, 0.541];

const runs = PITCH.map((pitchRatio, i) => ({
  facts: facts({ pitchRatio }),
  reduction: run({ thrustCoefficient: K_T[i]! }),
  variant: `pitch ${pitchRatio}`,
}));

const trend = trendOf(runs, { factor: "pitchRatio", quantity: "thrustCoefficient", scale: "linear" });

/**
 * All by numpy 2.4.6 `linalg.lstsq` of ln K_T on 1, x, x² and scipy 1.17.1: covariance s² inv(X.T X) with 7 degrees of
 * freedom; Fieller by the roots (`numpy.roots`) of (a - r b)² = t² (V_a - 2 r C + r² V_b); AICc by its definition.
 */
test("optimum pitch ratio by the delta method and by Fieller", () => {
  expect(trend.order).toBe(2);
  expect(trend.orderBecause).toBe("criterion");
  expect(trend.optimum).toMatchObject({ kind: "maximum", inside: true });
  expect(trend.optimum!.at.value).toSatisfy(relative(1.0617332951910186, 1e-10));
  expect(trend.optimum!.at.standardUncertainty).toSatisfy(relative(0.01069468417939639, 1e-8));
  expect(trend.optimum!.fieller95![0]).toSatisfy(relative(1.0381745210086801, 1e-9));
  expect(trend.optimum!.fieller95![1]).toSatisfy(relative(1.089890420881259, 1e-9));
  expect(trend.sentence).toContain("is greatest at a pitch ratio of 1.06 (95 %: 1.04 to 1.09)");
});

test("the change from end to end, whose doubt is not that of two ends apart", () => {
  // d' b and t² d' V d with d = (0, 1.4 - 0.6, 1.4² - 0.6²).
  expect(trend.change.value).toSatisfy(relative(1.0584582780695273, 1e-10));
  expect(trend.change.interval95[0]).toSatisfy(relative(1.0368419407929907, 1e-9));
  expect(trend.change.interval95[1]).toSatisfy(relative(1.0805252780930736, 1e-9));
});

test("band, lack of fit, test of the curve and criteria", () => {
  const at = trend.band.reduce((a, b) => (Math.abs(b.x - 1.1) < Math.abs(a.x - 1.1) ? b : a));
  expect(at.x).toBeCloseTo(1.1, 12);
  expect(at.value).toSatisfy(relative(0.5817755101539958, 1e-10));
  expect(at.interval95[0]).toSatisfy(relative(0.5754878598033019, 1e-9));
  expect(at.interval95[1]).toSatisfy(relative(0.5881318579520104, 1e-9));
  expect(trend.degreesOfFreedom).toBe(7);
  expect(trend.scatter).toSatisfy(relative(Math.sqrt(9.518055686574031e-5), 1e-9));
  expect(trend.lackOfFit!.F).toSatisfy(relative(0.4103646024319226, 1e-8));
  expect(trend.lackOfFit!.degreesOfFreedom).toEqual([2, 5]);
  expect(trend.lackOfFit!.pValue).toSatisfy(relative(0.683882550443263, 1e-8));
  expect(trend.slopePValue).toSatisfy(relative(7.3429090599287805e-6, 1e-7));
  const [level, line, bend] = trend.criteria.map(({ correctedCriterion }) => correctedCriterion) as [
    number,
    number,
    number,
  ];
  // Weights of one common factor shift all criteria alike.
  expect(line - level).toBeCloseTo(-54.70271461549851 + 56.673311115207966, 8);
  expect(bend - level).toBeCloseTo(-80.16409815567982 + 56.673311115207966, 8);
});

test("Fieller's interval with covariance, from the coefficients of the same curve", () => {
  const ends = fiellerInterval({
    ...{ numerator: -1.221396667056163, denominator: -1.1503799236477923 },
    ...{ varianceNumerator: 0.00861723970195417, varianceDenominator: 0.00849826400587192 },
    ...{ covariance: 0.00849826400587196, coverageFactor: 2.364624251592784 },
  });
  expect(ends![0]).toSatisfy(relative(1.0381745210086801, 1e-8));
  expect(ends![1]).toSatisfy(relative(1.089890420881259, 1e-8));
});

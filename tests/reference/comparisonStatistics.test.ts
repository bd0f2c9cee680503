import { expect, test } from "vitest";
import { fiellerInterval } from "../../shared/numeric/fieller.ts";
import { holm } from "../../shared/numeric/holm.ts";
import { median, medianAbsoluteDeviation } from "../../shared/numeric/median.ts";
import { moments } from "../../shared/numeric/moments.ts";
import { coverageFactor } from "../../shared/quantity/uncertain.ts";

const A = [0.2412, 0.2387, 0.243, 0.2405];
const B = [0.2295, 0.2321, 0.2288, 0.231, 0.2301];

// R 4.2.2: `p.adjust(p, "holm")`.
test.each([
  { p: [0.01, 0.02, 0.03, 0.04, 0.05], adjusted: [0.05, 0.08, 0.09, 0.09, 0.09] },
  {
    p: [0.0004, 0.0201, 0.0118, 0.324, 0.0095, 0.0019],
    adjusted: [0.0024, 0.0402, 0.038, 0.324, 0.038, 0.0095],
  },
  { p: [0.0021, 0.6, 0.013, 0.025], adjusted: [0.0084, 0.6, 0.039, 0.05] },
])("Holm's correction of $p is that of R, in the order given", ({ p, adjusted }) => {
  holm(p).forEach((value, i) => {
    expect(value).toBeCloseTo(adjusted[i]!, 12);
  });
});

test("Holm's correction of three tests is that of a published example, which keeps p at 1 or below", () => {
  // Abdi, "Holm's sequential Bonferroni procedure", Encyclopedia of Research Design (2010): from memory.
  const found = holm([0.00004, 0.0161, 0.6123]);
  [0.00012, 0.0322, 0.6123].forEach((expected, i) => {
    expect(found[i]).toBeCloseTo(expected, 12);
  });
});

// Fieller, J. Royal Statistical Society B 16 (1954) 175, evaluated with R 4.2.2 on the groups above.
test.each([
  {
    name: "pooled variance, 7 degrees of freedom",
    variances: [2.307142857143e-6 / 4, 2.307142857143e-6 / 5],
    dof: 7,
    interval: [1.035182721157, 1.056538657831],
  },
  {
    name: "own variances, Satterthwaite's degrees of freedom",
    variances: [3.163333333333e-6 / 4, 1.665e-6 / 5],
    dof: 5.5212383465,
    interval: [1.034187289738, 1.057514369106],
  },
])("Fieller's interval for a ratio of means: $name", ({ variances, dof, interval }) => {
  const found = fiellerInterval({
    numerator: moments(A).mean,
    denominator: moments(B).mean,
    varianceNumerator: variances[0]!,
    varianceDenominator: variances[1]!,
    coverageFactor: coverageFactor(dof),
  });
  expect(found![0]).toBeCloseTo(interval[0]!, 9);
  expect(found![1]).toBeCloseTo(interval[1]!, 9);
});

test("a denominator that can not be told from zero has no Fieller interval", () => {
  // g = 2.2² * 0.09 / 0.5² = 1.7424, by hand.
  const ratio = { numerator: 1, denominator: 0.5, varianceNumerator: 0.01, varianceDenominator: 0.09 };
  expect(fiellerInterval({ ...ratio, coverageFactor: 2.2 })).toBeNull();
  expect(fiellerInterval({ ...ratio, coverageFactor: 1.6 })).not.toBeNull();
});

// R 4.2.2: `median` and `mad`.
test("median and median absolute deviation are those of R", () => {
  const y = [2.1, 3.9, 6.2, 7.8, 10.1, 12.2, 13.8, 30.0, 18.1];
  const z = y.map((value, i) => value - 2 * (i + 1));
  expect(median(z)).toBeCloseTo(0.1, 12);
  expect(medianAbsoluteDeviation(z)).toBeCloseTo(0.14826022185, 10);
});

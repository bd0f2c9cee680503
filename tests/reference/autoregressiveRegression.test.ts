import { expect, test } from "vitest";
import { autoregressiveRegression, firstAutocorrelation } from "../../shared/numeric/autoregressiveRegression.ts";
import { relativeError } from "../relative.ts";

// x1 = (1 + t/10)², x2 = sin(t/7), y = 0.7 x1 - 1.3 x2 + 0.3 cos 0.9t + 0.2 sin 2.3t² + 0.25 cos 0.35t, t = 0..39.
const TIMES = Array.from({ length: 40 }, (_, t) => t);
const COLUMNS = [TIMES.map((t) => (1 + t / 10) ** 2), TIMES.map((t) => Math.sin(t / 7))] as const;
const Y = TIMES.map(
  (t) =>
    0.7 * COLUMNS[0][t]! -
    1.3 * COLUMNS[1][t]! +
    0.3 * Math.cos(0.9 * t) +
    0.2 * Math.sin(2.3 * t * t) +
    0.25 * Math.cos(0.35 * t),
);

// numpy 2.4.6: generalised least squares with the full covariance V_ij = ρ^|i-j| / (1 - ρ²) inverted as a matrix,
// b = (XᵀV⁻¹X)⁻¹XᵀV⁻¹y, ρ = Σ r_t r_(t-1) / Σ r_t², repeated until ρ changes by less than 1e-14; standard errors from
// s² = rᵀV⁻¹r/(n - 2); robust ones by Newey & West with Bartlett weights to lag 3 and factor n/(n - 2) on the whitened
// residuals. With a gap V is block-diagonal.
test.each([
  {
    gap: -1,
    coefficients: [0.6954524282724207, -1.3674125683790597],
    rho: 0.6211543215644301,
    errors: [0.01034859620120214, 0.17727550685567134],
    robust: [0.01138076180803579, 0.1612720805154797],
    influences: [-0.00058842995153725, 0.0004346123987686, 0.01053548846531682],
  },
  {
    gap: 15,
    coefficients: [0.6980282591076221, -1.306399255979062],
    rho: 0.6034779119428163,
    errors: [0.00956557035153644, 0.15746262800955174],
    robust: [0.01091910580122481, 0.15802642481091633],
    influences: [-0.00032739034500765, 0.00036811624662832, 0.00955835825712566],
  },
])("the regression agrees with the whole covariance inverted as a matrix (gap before sample $gap)", (row) => {
  const fit = autoregressiveRegression({
    y: Y,
    columns: COLUMNS,
    follows: TIMES.map((t) => t !== 0 && t !== row.gap),
  });
  expect(fit.converged).toBe(true);
  expect(relativeError(fit.autocorrelation, row.rho)).toBeLessThan(1e-8);
  const close = (found: readonly number[], wanted: readonly number[]) =>
    wanted.forEach((value, i) => {
      expect(relativeError(found[i]!, value)).toBeLessThan(1e-7);
    });
  close(fit.coefficients, row.coefficients);
  close(fit.standardErrors, row.errors);
  close(fit.robustStandardErrors, row.robust);
  close(
    [0, 1, 39].map((t) => fit.influences[0]![t]!),
    row.influences,
  );
});

// Luteinizing hormone in blood samples at 10 min intervals, 48 readings (R data set `lh`; Diggle, Time Series: A
// Biostatistical Introduction (1990), table A.1).
const LH = [
  2.4, 2.4, 2.4, 2.2, 2.1, 1.5, 2.3, 2.3, 2.5, 2.0, 1.9, 1.7, 2.2, 1.8, 3.2, 3.2, 2.7, 2.2, 2.2, 1.9, 1.9, 1.8, 2.7,
  3.0, 2.3, 2.0, 2.0, 2.9, 2.9, 2.7, 2.7, 2.3, 2.6, 2.4, 1.8, 1.7, 1.5, 1.4, 2.1, 3.3, 3.5, 3.5, 3.1, 2.6, 2.1, 3.4,
  3.0, 2.9,
];
const FOLLOWS = LH.map((_, t) => t > 0);

test("the first autocorrelation of the hormone series is that of R", () => {
  const mean = LH.reduce((sum, value) => sum + value, 0) / LH.length;
  const found = firstAutocorrelation(
    LH.map((value) => value - mean),
    FOLLOWS,
  );
  // R 4.2.2 `acf(lh, plot = FALSE)`: 0.5755244755.
  expect(found).toBeCloseTo(0.5755244755, 9);
});

// R's own example of `arima(lh, order = c(1,0,0))` prints ar1 0.5739, s.e. 0.1161; intercept 2.4133, s.e. 0.1466; from
// memory. Maximum likelihood differs from least squares in the autocorrelation; the mean hardly depends on it.
test("the mean of the hormone series and its error agree with R's maximum likelihood", () => {
  const fit = autoregressiveRegression({ y: LH, columns: [LH.map(() => 1)], follows: FOLLOWS });
  expect(Math.abs(fit.coefficients[0]! - 2.4133)).toBeLessThan(0.002);
  expect(relativeError(fit.standardErrors[0]!, 0.1466)).toBeLessThan(0.05);
  expect(Math.abs(fit.autocorrelation - 0.5739)).toBeLessThan(0.01);
});

import { type SampleMean, sampleMean } from "./sampleMean.ts";

/**
 * Scatter (type A) of the mean of `values` that is left when the rotation rate of the same moments is allowed for by
 * values ∝ n^`exponent`.
 *
 * Thrust and rotation rate rise and fall together under a tiring battery or a hunting controller; their ratio T/n² does
 * not. Taking both scatters as independent would count the same wobble twice, so it is taken of y - p ȳ n/n̄, the
 * first-order change of the coefficient in units of y (JCGM 100:2008, 5.2.2, with the covariance).
 */
export function jointScatter(values: Float64Array, rates: Float64Array, exponent: number): SampleMean {
  const y = plainMean(values);
  const n = plainMean(rates);
  const departures = values.map((value, i) => value - (exponent * y * rates[i]!) / n);
  return departures.some((value) => value === value) ? sampleMean(departures, 0) : sampleMean(values, 0);
}

function plainMean(values: Float64Array): number {
  let sum = 0;
  let count = 0;
  for (const value of values) {
    if (value === value) {
      sum += value;
      count++;
    }
  }
  return sum / count;
}

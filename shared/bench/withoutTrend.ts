import { plainMean } from "./sampleMean.ts";

/**
 * `values` less the straight line through them over their position, their mean kept; NaN stays. Within a bin of a ramp the
 * climb itself is no scatter.
 */
export function withoutTrend(values: Float64Array): Float64Array {
  const mean = plainMean(values);
  let [above, below, count, sum] = [0, 0, 0, 0];
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) continue;
    sum += i;
    count++;
  }
  const middle = sum / count;
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) continue;
    above += (i - middle) * (values[i]! - mean);
    below += (i - middle) ** 2;
  }
  const slope = below > 0 ? above / below : 0;
  return values.map((value, i) => value - slope * (i - middle));
}

import type { MeasuredPlateau } from "./measuredPlateau.ts";
import { remembered } from "./remembered.ts";
import { plainMean, type SampleMean, sampleMean, scaledMean } from "./sampleMean.ts";

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
  const slope = (exponent * y) / n;
  const departures = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) departures[i] = values[i]! - slope * rates[i]!;
  return sampleMean(departures, 0);
}

/** Scatter of the thrust of a plateau with the rotation rate allowed for. */
export function thrustScatterOf(plateau: MeasuredPlateau): SampleMean {
  const { written, scales } = plateau;
  const scatter = remembered(written, { stage: "thrustScatter", dependsOn: null }, () => {
    const { thrust, rotationRate } = written.readings;
    return jointScatter(thrust, rotationRate, 2);
  });
  return scaledMean(scatter, scales.thrust);
}

/** The same of the torque; null where none was read together with the rotation rate. */
export function torqueScatterOf(plateau: MeasuredPlateau): SampleMean | null {
  const { written, scales } = plateau;
  const scatter = remembered(written, { stage: "torqueScatter", dependsOn: null }, () => {
    const { torque, rotationRate } = written.readings;
    const together = torque?.some((value, i) => Number.isFinite(value * rotationRate[i]!));
    return torque && together ? jointScatter(torque, rotationRate, 2) : null;
  });
  return scatter && scaledMean(scatter, scales.torque);
}

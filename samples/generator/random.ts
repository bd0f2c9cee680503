import { normalDraw } from "../../shared/numeric/distributions.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";

/** A source of random numbers that gives the same numbers for the same seed on every machine. */
export interface RandomSource {
  /** Evenly spread over [0, 1). */
  uniform(): number;
  /** Normal deviate, mean 0, standard deviation 1. */
  normal(): number;
  /** Integer, evenly spread from `low` to `high`, both included. */
  integer(low: number, high: number): number;
}

/**
 * Random source on `pcg32`. Normal deviates by Box & Muller, Annals of Mathematical Statistics 29 (1958) 610;
 * the second deviate of each pair is thrown away, which keeps the source free of hidden state.
 */
export function randomSource(seed: number, stream: number): RandomSource {
  const uniform = uniformsFrom(seed, stream);
  return {
    uniform,
    normal: () => normalDraw(uniform),
    integer: (low, high) => low + Math.floor(uniform() * (high - low + 1)),
  };
}

/** Normal noise that remembers: autoregressive of first order, with the given standard deviation and lag-one correlation. */
export function slowNoise(random: RandomSource, standardDeviation: number, correlation: number): () => number {
  let value = standardDeviation * random.normal();
  const fresh = standardDeviation * Math.sqrt(1 - correlation ** 2);
  return () => {
    value = correlation * value + fresh * random.normal();
    return value;
  };
}

const MULTIPLIER = 6364136223846793005n;
const WORD = (1n << 64n) - 1n;

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
 * The generator PCG-XSH-RR with 64 bits of state and 32 bits of output, as a function of no arguments.
 * Source: M. E. O'Neill, PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random
 * Number Generation, Harvey Mudd College, HMC-CS-2014-0905 (2014), section 6.3.1.
 * `stream` picks one of 2^63 sequences, so that logs do not share their noise.
 */
export function pcg32(seed: number, stream: number): () => number {
  const increment = ((BigInt(stream) << 1n) | 1n) & WORD;
  let state = (increment + BigInt(seed)) & WORD;
  state = (state * MULTIPLIER + increment) & WORD;
  return () => {
    const old = state;
    state = (old * MULTIPLIER + increment) & WORD;
    const shifted = Number((((old >> 18n) ^ old) >> 27n) & 0xffffffffn);
    const rotation = Number(old >> 59n);
    return ((shifted >>> rotation) | (shifted << (-rotation & 31))) >>> 0;
  };
}

/**
 * Random source on `pcg32`. Normal deviates by Box & Muller, Annals of Mathematical Statistics 29 (1958) 610;
 * the second deviate of each pair is thrown away, which keeps the source free of hidden state.
 */
export function randomSource(seed: number, stream: number): RandomSource {
  const next = pcg32(seed, stream);
  const uniform = () => next() / 2 ** 32;
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
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

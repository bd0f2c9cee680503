/** 6364136223846793005 in words of 32 bits. */
const MULTIPLIER_HIGH = 0x5851f42d;
const MULTIPLIER_LOW = 0x4c957f2d;
const WORD = 2 ** 32;

/** High 32 bits of the product of two unsigned 32-bit numbers. */
function highProduct(a: number, b: number): number {
  const [aHigh, aLow, bHigh, bLow] = [a >>> 16, a & 0xffff, b >>> 16, b & 0xffff];
  const middle = aHigh * bLow + Math.floor((aLow * bLow) / 65536);
  return aHigh * bHigh + Math.floor(middle / 65536) + Math.floor(((middle % 65536) + aLow * bHigh) / 65536);
}

/**
 * The random number generator PCG-XSH-RR with 64 bits of state and 32 bits of output, as a function of no arguments:
 * whole numbers from 0 to 2^32 - 1, the same for the same seed on every machine. `stream` picks one of the sequences.
 * Nothing here is random by itself: whoever wants another draw gives another seed.
 *
 * Source   M. E. O'Neill, PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random Number
 *          Generation, Harvey Mudd College, HMC-CS-2014-0905 (2014), section 6.3.1. In two words of 32 bits, because big
 *          integers take thirty times as long.
 * Range    seed a whole number from 0 to 2^53, stream one from 0 to 2^31 - 1.
 */
export function pcg32(seed: number, stream: number): () => number {
  const increment = ((stream << 1) | 1) >>> 0;
  let high = 0;
  let low = 0;
  const add = (moreHigh: number, moreLow: number) => {
    const sum = low + moreLow;
    high = (high + moreHigh + (sum >= WORD ? 1 : 0)) >>> 0;
    low = sum >>> 0;
  };
  const step = () => {
    const carried = highProduct(low, MULTIPLIER_LOW);
    high = (carried + Math.imul(high, MULTIPLIER_LOW) + Math.imul(low, MULTIPLIER_HIGH)) >>> 0;
    low = Math.imul(low, MULTIPLIER_LOW) >>> 0;
    add(0, increment);
  };
  step();
  add(Math.floor(seed / WORD) >>> 0, seed >>> 0);
  step();
  return () => {
    const [oldHigh, oldLow] = [high, low];
    step();
    // ((old >> 18) ^ old) >> 27, its low 32 bits.
    const shiftedHigh = (oldHigh >>> 18) ^ oldHigh;
    const shiftedLow = ((oldLow >>> 18) | (oldHigh << 14)) ^ oldLow;
    const shifted = (shiftedLow >>> 27) | (shiftedHigh << 5);
    const rotation = oldHigh >>> 27;
    return ((shifted >>> rotation) | (shifted << (-rotation & 31))) >>> 0;
  };
}

/** Numbers evenly spread over [0, 1) from `pcg32`. */
export function uniformsFrom(seed: number, stream = 1): () => number {
  const next = pcg32(seed, stream);
  return () => next() / WORD;
}

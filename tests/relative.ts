/** For `toSatisfy`: within `tolerance` of `expected`, relative to its size. */
export function relative(expected: number, tolerance: number): (found: number) => boolean {
  return (found) => Math.abs(found - expected) <= tolerance * Math.abs(expected);
}

/** Distance of `found` from `expected` as a part of `expected`. */
export function relativeError(found: number, expected: number): number {
  return Math.abs(found - expected) / Math.abs(expected);
}

/** Distance of `found` from `expected` as a part of `expected`. */
export function relativeError(found: number, expected: number): number {
  return Math.abs(found - expected) / Math.abs(expected);
}

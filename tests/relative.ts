/** For `toSatisfy`: within `tolerance` of `expected`, relative to its size. */
export function relative(expected: number, tolerance: number): (found: number) => boolean {
  return (found) => Math.abs(found - expected) <= tolerance * Math.abs(expected);
}

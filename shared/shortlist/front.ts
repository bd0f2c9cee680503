/** Which way a quantity is better: 1 for more, -1 for less. */
export type Sense = 1 | -1;

export interface FrontPoint {
  readonly number: number;
  readonly x: number;
  readonly y: number;
}

/**
 * Points that no other is better than in both quantities (or better in one and equal in the other), kept while points
 * stream by: the best of `x` first. Points with a number that is not finite are passed over; of equal points the lowest
 * number stands for all, so that the outcome does not depend on the order.
 *
 * Source   maxima of a set of vectors in two dimensions: Kung, Luccio & Preparata, On finding the maxima of a set of
 *          vectors, Journal of the ACM 22 (1975) 469.
 * Error    none.
 */
export class ParetoFront {
  /** From the best of x to the worst; y gets better along it. */
  private readonly kept: FrontPoint[] = [];
  private seen = 0;

  constructor(
    private readonly senseOfX: Sense,
    private readonly senseOfY: Sense,
  ) {}

  /** Points offered with both numbers known. */
  get of(): number {
    return this.seen;
  }

  get points(): readonly FrontPoint[] {
    return this.kept;
  }

  add(number: number, x: number, y: number): void {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return;
    this.seen++;
    this.insert(number, x, y);
  }

  /** Takes in the front of other points. */
  merge(points: readonly FrontPoint[], of: number): void {
    this.seen += of;
    for (const { number, x, y } of points) this.insert(number, x, y);
  }

  private insert(number: number, x: number, y: number): void {
    const { kept, senseOfY } = this;
    const at = this.placeOf(x);
    const before = kept[at - 1];
    // Everything before `at` is better in x: one of them that is as good in y rules this one out.
    if (before !== undefined && senseOfY * before.y >= senseOfY * y) return;
    let end = at;
    const same = kept[at];
    if (same !== undefined && same.x === x) {
      if (senseOfY * same.y > senseOfY * y || (same.y === y && same.number <= number)) return;
      end++;
    }
    while (end < kept.length && senseOfY * kept[end]!.y <= senseOfY * y) end++;
    kept.splice(at, end - at, { number, x, y });
  }

  /** Place of the first point that is not better in x. */
  private placeOf(x: number): number {
    let [low, high] = [0, this.kept.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.senseOfX * this.kept[middle]!.x > this.senseOfX * x) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/**
 * The few of many that have the least cost, in order, while they stream by. Of equal cost the lower number comes first,
 * so that the outcome does not depend on the order in which they came.
 */
export class Best<T> {
  private readonly costs: number[] = [];
  private readonly numbers: number[] = [];
  private readonly held: T[] = [];

  constructor(private readonly room: number) {}

  /** Whether one of that cost and number would be kept: asked first, so that nothing is made for what is dropped. */
  wants(cost: number, number: number): boolean {
    const last = this.room - 1;
    if (last < 0 || !(cost < Infinity)) return false;
    if (this.costs.length < this.room) return true;
    return cost < this.costs[last]! || (cost === this.costs[last] && number < this.numbers[last]!);
  }

  add(cost: number, number: number, item: T): void {
    if (!this.wants(cost, number)) return;
    let at = this.costs.length;
    while (at > 0 && (this.costs[at - 1]! > cost || (this.costs[at - 1] === cost && this.numbers[at - 1]! > number)))
      at--;
    this.costs.splice(at, 0, cost);
    this.numbers.splice(at, 0, number);
    this.held.splice(at, 0, item);
    if (this.costs.length <= this.room) return;
    this.costs.pop();
    this.numbers.pop();
    this.held.pop();
  }

  get items(): readonly T[] {
    return this.held;
  }
}

/** What was worked out, latest last, and what it weighs. */
interface Shelf {
  readonly results: Map<string, { readonly result: unknown; readonly weight: number }>;
  held: number;
}

/** Held weakly: what was worked out of a log goes with the log. */
const shelves = new WeakMap<object, Map<string, Shelf>>();

export interface Remembering {
  /** Name of the piece of work. */
  readonly stage: string;
  /** Everything besides the anchor that the result depends on: plain data, and arrays by `identityOf`. */
  readonly dependsOn: unknown;
  /** What the result weighs, and how much is kept for this stage of this anchor; by default the last result alone. */
  readonly weight?: number;
  readonly budget?: number;
}

/**
 * `work()`, done again only when something it depends on has changed: after an edit, most of a reduction has not.
 * The results are shared and never changed; numbers are the same with and without.
 */
export function remembered<T>(anchor: object, remembering: Remembering, work: () => T): T {
  const { stage, dependsOn, weight = 1, budget = 1 } = remembering;
  const shelf = shelfOf(anchor, stage);
  const key = JSON.stringify(dependsOn) ?? "";
  const known = shelf.results.get(key);
  if (known !== undefined) {
    shelf.results.delete(key);
    shelf.results.set(key, known);
    return known.result as T;
  }
  const result = work();
  shelf.results.set(key, { result, weight });
  shelf.held += weight;
  trim(shelf, budget);
  return result;
}

function shelfOf(anchor: object, stage: string): Shelf {
  const own = shelves.get(anchor) ?? new Map<string, Shelf>();
  shelves.set(anchor, own);
  const shelf = own.get(stage) ?? { results: new Map(), held: 0 };
  own.set(stage, shelf);
  return shelf;
}

/** The oldest go first; the latest stays. */
function trim(shelf: Shelf, budget: number): void {
  for (const [key, { weight }] of shelf.results) {
    if (shelf.held <= budget || shelf.results.size === 1) return;
    shelf.results.delete(key);
    shelf.held -= weight;
  }
}

const identities = new WeakMap<object, number>();
let count = 0;

/** A number that stands for this very array, whatever it holds: the columns of a log are never changed. */
export function identityOf(array: object): number {
  const known = identities.get(array);
  if (known !== undefined) return known;
  identities.set(array, ++count);
  return count;
}

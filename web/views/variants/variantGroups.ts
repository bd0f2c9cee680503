import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";

export interface VariantMember {
  readonly id: string;
  readonly run: Run;
  /** Null while it is computed, and where it can not be. */
  readonly reduction: Reduction | null;
}

/** The runs that carry one variant name. */
export interface VariantRuns {
  readonly name: string;
  /** Style number that everything drawn of this variant shares, on every screen. */
  readonly style: number;
  readonly members: readonly VariantMember[];
}

/**
 * Runs by variant, or by another name that `variantOf` gives each; runs without one are in no group. Variants with several
 * mountings come first, then by name, so that what is usually compared gets the first and clearest styles.
 */
export function variantGroups(
  runs: readonly StoredDocument<Run>[],
  reductionOf: (id: string) => Reduction | null,
  variantOf: (run: StoredDocument<Run>) => string = ({ document }) => document.variant,
): VariantRuns[] {
  const named = runs
    .filter(({ document }) => document.purpose === "propeller")
    .map((run) => ({ run, name: variantOf(run) }))
    .filter(({ name }) => name !== "");
  const membersOf = (name: string) => named.filter((one) => one.name === name).map(({ run }) => run);
  return [...new Set(named.map(({ name }) => name))]
    .map((name) => ({ name, runs: membersOf(name).sort(byMounting) }))
    .sort((a, b) => Number(b.runs.length > 1) - Number(a.runs.length > 1) || inOrder(a.name, b.name))
    .map(({ name, runs: own }, style) => ({
      name,
      style,
      members: own.map(({ id, document }) => ({ id, run: document, reduction: reductionOf(id) })),
    }));
}

/**
 * The groups on show: those chosen, else the ones with several mountings where two or more have them, since single
 * mountings say little of a variant, else all.
 */
export function shownGroups(groups: readonly VariantRuns[], chosen: ReadonlySet<string> | null): VariantRuns[] {
  const picked = groups.filter(({ name }) => chosen?.has(name));
  if (picked.length > 0) return picked;
  const repeated = groups.filter(({ members }) => members.length > 1);
  return repeated.length > 1 ? repeated : [...groups];
}

/** The lowest style that no group on show has: for what stands beside them. */
export function freeStyle(groups: readonly { readonly style: number }[]): number {
  const taken = new Set(groups.map(({ style }) => style));
  let style = 0;
  while (taken.has(style)) style++;
  return style;
}

export function variantNames(runs: readonly StoredDocument<Run>[]): string[] {
  const measured = runs.filter(({ document }) => document.purpose === "propeller");
  return [...new Set(measured.map(({ document }) => document.variant).filter((name) => name !== ""))].sort(inOrder);
}

/** The reductions of a group that are there. */
export function reductionsOf({ members }: VariantRuns): Reduction[] {
  return members.flatMap(({ reduction }) => (reduction === null ? [] : [reduction]));
}

function byMounting({ document: a }: StoredDocument<Run>, { document: b }: StoredDocument<Run>): number {
  return inOrder(a.mounting || a.name, b.mounting || b.name);
}

function inOrder(a: string, b: string): number {
  return a.localeCompare(b, "en", { numeric: true });
}

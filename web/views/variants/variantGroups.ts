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

/** Runs by variant, in the order of the names; runs without a variant are in no group. */
export function variantGroups(
  runs: readonly StoredDocument<Run>[],
  reductionOf: (id: string) => Reduction | null,
): VariantRuns[] {
  return variantNames(runs).map((name, style) => ({
    name,
    style,
    members: runs
      .filter(({ document }) => document.variant === name)
      .sort((a, b) => inOrder(a.document.mounting || a.document.name, b.document.mounting || b.document.name))
      .map(({ id, document }) => ({ id, run: document, reduction: reductionOf(id) })),
  }));
}

export function variantNames(runs: readonly StoredDocument<Run>[]): string[] {
  return [...new Set(runs.map(({ document }) => document.variant).filter((name) => name !== ""))].sort(inOrder);
}

/** The reductions of a group that are there. */
export function reductionsOf({ members }: VariantRuns): Reduction[] {
  return members.flatMap(({ reduction }) => (reduction === null ? [] : [reduction]));
}

function inOrder(a: string, b: string): number {
  return a.localeCompare(b, "en", { numeric: true });
}

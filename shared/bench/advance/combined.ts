import { effectiveDegreesOfFreedom } from "../../numeric/welchSatterthwaite.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import type { CommonPart } from "../commonParts.ts";

/** What a derived number is made from, and its change by a change of that. */
export interface Contribution {
  readonly weight: number;
  /** Standard uncertainty that nothing else shares. */
  readonly independent: number;
  readonly degreesOfFreedom: number;
  readonly parts: readonly CommonPart[];
}

/**
 * `value` with the doubt of its contributions: causes of the same key act together with their signs, the rest adds in
 * squares.
 *
 * Source   JCGM 100:2008, 5.2.2, and G.4 for the degrees of freedom.
 */
export function combined(value: number, contributions: readonly Contribution[]): Uncertain {
  const shared = new Map<string, { change: number; degreesOfFreedom: number }>();
  for (const { parts, weight } of contributions) {
    for (const { key, change, degreesOfFreedom } of parts) {
      shared.set(key, { change: (shared.get(key)?.change ?? 0) + weight * change, degreesOfFreedom });
    }
  }
  const doubts = [
    ...contributions.map(({ weight, independent, degreesOfFreedom }) => ({
      standardUncertainty: Math.abs(weight * independent),
      degreesOfFreedom,
    })),
    ...[...shared.values()].map(({ change, degreesOfFreedom }) => ({
      standardUncertainty: Math.abs(change),
      degreesOfFreedom,
    })),
  ];
  const total = Math.hypot(...doubts.map((doubt) => doubt.standardUncertainty));
  return uncertain(value, total, effectiveDegreesOfFreedom(doubts));
}

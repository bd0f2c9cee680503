import { withParts } from "../numeric/combined.ts";
import type { UncertaintyPart } from "../numeric/welchSatterthwaite.ts";
import type { Uncertain } from "../quantity/uncertain.ts";
import type { CommonPart } from "./commonParts.ts";

/** What a derived number is made from, and its change by a change of that. */
export interface Contribution {
  readonly weight: number;
  /** Standard uncertainty that nothing else shares. */
  readonly independent: number;
  readonly degreesOfFreedom: number;
  readonly parts: readonly CommonPart[];
}

/**
 * Independent parts of a number made from `contributions`: causes of the same key act together with their signs.
 *
 * Source   JCGM 100:2008, 5.2.2.
 */
export function partsOf(contributions: readonly Contribution[]): UncertaintyPart[] {
  const shared = new Map<string, { change: number; degreesOfFreedom: number }>();
  for (const { parts, weight } of contributions) {
    for (const { key, change, degreesOfFreedom } of parts) {
      shared.set(key, { change: (shared.get(key)?.change ?? 0) + weight * change, degreesOfFreedom });
    }
  }
  return [
    ...contributions.map(({ weight, independent, degreesOfFreedom }) => ({
      standardUncertainty: Math.abs(weight * independent),
      degreesOfFreedom,
    })),
    ...[...shared.values()].map(({ change, degreesOfFreedom }) => ({
      standardUncertainty: Math.abs(change),
      degreesOfFreedom,
    })),
  ];
}

/** `value` with the doubt of its contributions. */
export function withContributions(value: number, contributions: readonly Contribution[]): Uncertain {
  return withParts(value, partsOf(contributions));
}

import type { CoefficientFit } from "../model/reduction.ts";
import { effectiveDegreesOfFreedom } from "../numeric/welchSatterthwaite.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import type { OriginFit } from "./coefficientFit.ts";
import type { CommonPart } from "./commonParts.ts";

/** A coefficient with the whole of its doubt. */
export interface FullFit {
  readonly fit: OriginFit;
  readonly parts: readonly CommonPart[];
  readonly document: CoefficientFit;
}

/** Adds what all plateaus share to a fit: u² = u²_independent + Σ c². */
export function fullFit(fit: OriginFit, parts: readonly CommonPart[]): FullFit {
  const common = Math.hypot(...parts.map((part) => part.change));
  const degreesOfFreedom = effectiveDegreesOfFreedom([
    { standardUncertainty: fit.independent, degreesOfFreedom: fit.degreesOfFreedom },
    ...parts.map((part) => ({ standardUncertainty: Math.abs(part.change), degreesOfFreedom: part.degreesOfFreedom })),
  ]);
  return {
    fit,
    parts,
    document: {
      coefficient: uncertain(fit.coefficient, Math.hypot(fit.independent, common), degreesOfFreedom),
      independentUncertainty: fit.independent,
      commonUncertainty: common,
      components: parts.map(({ name, key, change }) => ({ name, key, standardUncertainty: Math.abs(change) })),
      // JSON knows no infinity; so many are the same to nine digits.
      degreesOfFreedom: Math.min(degreesOfFreedom, 1e9),
      points: fit.influences.length,
      chiSquared: fit.chiSquared,
      scatterRatio: fit.scatterRatio,
    },
  };
}

/**
 * Static merit K_T^(3/2) / (C_P sqrt(π/2)) of two fits of one run. Causes that both share act on both: a diameter that
 * is off moves K_T by four and C_P by five parts, and the merit by one.
 *
 * Null where either coefficient is not positive. Source   JCGM 100:2008, 5.2.2.
 */
export function meritOf(thrust: FullFit, power: FullFit): Uncertain | null {
  const [K_T, C_P] = [thrust.fit.coefficient, power.fit.coefficient];
  if (!(K_T > 0) || !(C_P > 0)) return null;
  const merit = K_T ** 1.5 / (C_P * Math.sqrt(Math.PI / 2));
  const relative = new Map<string, { change: number; degreesOfFreedom: number }>();
  const add = (parts: readonly CommonPart[], weight: number) => {
    for (const { key, change, degreesOfFreedom } of parts) {
      const before = relative.get(key)?.change ?? 0;
      relative.set(key, { change: before + weight * change, degreesOfFreedom });
    }
  };
  add(thrust.parts, 1.5 / K_T);
  add(power.parts, -1 / C_P);
  const doubts = [
    { standardUncertainty: (1.5 * thrust.fit.independent) / K_T, degreesOfFreedom: thrust.fit.degreesOfFreedom },
    { standardUncertainty: power.fit.independent / C_P, degreesOfFreedom: power.fit.degreesOfFreedom },
    ...[...relative.values()].map(({ change, degreesOfFreedom }) => ({
      standardUncertainty: Math.abs(change),
      degreesOfFreedom,
    })),
  ];
  const total = merit * Math.hypot(...doubts.map((doubt) => doubt.standardUncertainty));
  return uncertain(merit, total, effectiveDegreesOfFreedom(doubts));
}

import type { CoefficientFit } from "../model/reduction.ts";
import { effectiveDegreesOfFreedom } from "../numeric/welchSatterthwaite.ts";
import { staticMerit } from "../propeller/staticMerit.ts";
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
  const found = meritDoubts(thrust, power);
  if (found === null) return null;
  const total = Math.hypot(...found.doubts.map((doubt) => doubt.standardUncertainty));
  return uncertain(found.merit, total, effectiveDegreesOfFreedom(found.doubts));
}

/** The merit, its change by each coefficient, and its independent doubts; null where either coefficient is not positive. */
export function meritDoubts(thrust: FullFit, power: FullFit) {
  const [K_T, C_P] = [thrust.fit.coefficient, power.fit.coefficient];
  if (!(K_T > 0) || !(C_P > 0)) return null;
  const merit = staticMerit({ thrustCoefficient: K_T, powerCoefficient: C_P });
  const [byThrust, byPower] = [(1.5 * merit) / K_T, -merit / C_P];
  const shared = new Map<string, { change: number; degreesOfFreedom: number }>();
  const add = (parts: readonly CommonPart[], weight: number) => {
    for (const { key, change, degreesOfFreedom } of parts) {
      const before = shared.get(key)?.change ?? 0;
      shared.set(key, { change: before + weight * change, degreesOfFreedom });
    }
  };
  add(thrust.parts, byThrust);
  add(power.parts, byPower);
  const own = (fit: OriginFit, weight: number) => ({
    standardUncertainty: Math.abs(weight) * fit.independent,
    degreesOfFreedom: fit.degreesOfFreedom,
  });
  const doubts = [
    own(thrust.fit, byThrust),
    own(power.fit, byPower),
    ...[...shared.values()].map(({ change, degreesOfFreedom }) => ({
      standardUncertainty: Math.abs(change),
      degreesOfFreedom,
    })),
  ];
  return { merit, byThrust, byPower, doubts };
}

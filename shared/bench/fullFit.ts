import type { CoefficientFit } from "../model/reduction.ts";
import { combined, withParts } from "../numeric/combined.ts";
import { staticMerit } from "../propeller/staticMerit.ts";
import { type Uncertain, uncertain } from "../quantity/uncertain.ts";
import type { OriginFit } from "./coefficientFit.ts";
import type { CommonPart } from "./commonParts.ts";
import { type Contribution, partsOf } from "./contributions.ts";

/** A coefficient with the whole of its doubt. */
export interface FullFit {
  readonly fit: OriginFit;
  readonly parts: readonly CommonPart[];
  readonly document: CoefficientFit;
}

/** Adds what all plateaus share to a fit: u² = u²_independent + Σ c². */
export function fullFit(fit: OriginFit, parts: readonly CommonPart[]): FullFit {
  const shared = parts.map(({ change, degreesOfFreedom }) => ({
    standardUncertainty: Math.abs(change),
    degreesOfFreedom,
  }));
  const common = combined(shared).standardUncertainty;
  const all = combined([{ standardUncertainty: fit.independent, degreesOfFreedom: fit.degreesOfFreedom }, ...shared]);
  return {
    fit,
    parts,
    document: {
      coefficient: uncertain(fit.coefficient, all.standardUncertainty, all.degreesOfFreedom),
      independentUncertainty: fit.independent,
      commonUncertainty: common,
      components: parts.map(({ name, key, change }) => ({ name, key, standardUncertainty: Math.abs(change) })),
      // JSON knows no infinity; so many are the same to nine digits.
      degreesOfFreedom: Math.min(all.degreesOfFreedom, 1e9),
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
  return found && withParts(found.merit, found.doubts);
}

/** The merit, its change by each coefficient, and its independent doubts; null where either coefficient is not positive. */
export function meritDoubts(thrust: FullFit, power: FullFit) {
  const [K_T, C_P] = [thrust.fit.coefficient, power.fit.coefficient];
  if (!(K_T > 0) || !(C_P > 0)) return null;
  const merit = staticMerit({ thrustCoefficient: K_T, powerCoefficient: C_P });
  const [byThrust, byPower] = [(1.5 * merit) / K_T, -merit / C_P];
  const contribution = ({ fit, parts }: FullFit, weight: number): Contribution => ({
    weight,
    independent: fit.independent,
    degreesOfFreedom: fit.degreesOfFreedom,
    parts,
  });
  const doubts = partsOf([contribution(thrust, byThrust), contribution(power, byPower)]);
  return { merit, byThrust, byPower, doubts };
}

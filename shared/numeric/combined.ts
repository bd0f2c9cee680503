import { coverageFactor, type Uncertain, uncertain } from "../quantity/uncertain.ts";
import { effectiveDegreesOfFreedom, type UncertaintyPart } from "./welchSatterthwaite.ts";

/** What independent parts of doubt make together. */
export interface Combined extends UncertaintyPart {
  /** Student's factor for 95 %. */
  readonly coverageFactor: number;
  /** Half the width of the 95 % interval; its unit. */
  readonly expanded95: number;
}

/**
 * Combined standard uncertainty of independent parts, its degrees of freedom and its 95 % interval.
 *
 *   u_c² = Σ u_i²,   U_95 = t_95(ν_eff) u_c
 *
 * Source   JCGM 100:2008 (GUM), eqs 11a and G.2b, G.4.
 * Throws   OutOfDomain for a negative uncertainty or degrees of freedom not greater than 0.
 */
export function combined(parts: readonly UncertaintyPart[]): Combined {
  const degreesOfFreedom = effectiveDegreesOfFreedom(parts);
  const standardUncertainty = Math.hypot(...parts.map((part) => part.standardUncertainty));
  const factor = coverageFactor(degreesOfFreedom);
  return { standardUncertainty, degreesOfFreedom, coverageFactor: factor, expanded95: factor * standardUncertainty };
}

/** `value` with the doubt that independent parts make together. */
export function withParts(value: number, parts: readonly UncertaintyPart[]): Uncertain {
  const { standardUncertainty, degreesOfFreedom } = combined(parts);
  return uncertain(value, standardUncertainty, degreesOfFreedom);
}

/** Parts known without limit: what was typed or read from a data sheet. */
export const known = (...standardUncertainties: readonly number[]): UncertaintyPart[] =>
  standardUncertainties.map((u) => ({ standardUncertainty: Math.abs(u), degreesOfFreedom: Infinity }));

/** A part that is judged by an estimate which others share. */
export interface JudgedPart extends UncertaintyPart {
  /** Degrees of freedom of what is shared, not less than its own; absent: all of the estimate is. */
  readonly commonDegreesOfFreedom?: number | undefined;
}

/**
 * Parts that are independent of each other but judged by one estimate of scatter, such as the means of plateaus whose
 * readings hang together alike: where one is too small, all are.
 *
 *   1/ν = (Σ w_i / √c_i)² + Σ w_i² (1/ν_i - 1/c_i),   w_i = u_i²/Σ u²
 *
 * with c_i the degrees of freedom of what is shared, by itself; which is ν where all have the same and share all of it.
 *
 * Source   the relative standard deviation sqrt(2/ν_i) of each squared uncertainty, JCGM 100:2008, G.3.3, from memory:
 *          what is shared is added without cancelling, the rest in squares. The split by c_i is derived here, no source.
 * Range    u_i of 0 or more, ν_i greater than 0, c_i not less than ν_i.
 */
export function judgedTogether(parts: readonly JudgedPart[]): UncertaintyPart {
  const standardUncertainty = Math.hypot(...parts.map((part) => part.standardUncertainty));
  let [shared, apart] = [0, 0];
  for (const { standardUncertainty: u, degreesOfFreedom, commonDegreesOfFreedom: common = degreesOfFreedom } of parts) {
    if (u === 0) continue;
    const weight = (u / standardUncertainty) ** 2;
    shared += weight / Math.sqrt(common);
    apart += weight ** 2 * (1 / degreesOfFreedom - 1 / common);
  }
  const doubt = shared ** 2 + apart;
  return { standardUncertainty, degreesOfFreedom: doubt === 0 ? Infinity : 1 / doubt };
}

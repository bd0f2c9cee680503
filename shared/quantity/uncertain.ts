import quantile from "@stdlib/stats-base-dists-t-quantile";
import { OutOfDomain } from "./problem.ts";

/**
 * A number with what is known of its doubt: the form in which every uncertain number leaves the program.
 * Standard uncertainty and coverage as in JCGM 100:2008 (GUM), 2.3.1 and annex G.
 */
export interface Uncertain {
  readonly value: number;
  readonly standardUncertainty: number;
  /** Ends of the interval that covers the true value in 95 of 100 such measurements. */
  readonly interval95: readonly [number, number];
}

/**
 * `value` with `standardUncertainty` and the two-sided 95 % Student interval for `degreesOfFreedom`
 * (infinite: normal, k = 1.96).
 *
 * Source   JCGM 100:2008, G.3.
 * Throws   OutOfDomain for a value or uncertainty that is not finite, or degrees of freedom that are not positive.
 */
export function uncertain(value: number, standardUncertainty: number, degreesOfFreedom = Infinity): Uncertain {
  if (!Number.isFinite(value) || !(standardUncertainty >= 0) || !Number.isFinite(standardUncertainty)) {
    throw new OutOfDomain({
      found: `a value of ${written(value)} with standard uncertainty ${written(standardUncertainty)}`,
      needed: "finite numbers, the uncertainty not negative",
      mend: "Look for a number that is far out of scale, such as a unit read as another",
    });
  }
  const half = coverageFactor(degreesOfFreedom) * standardUncertainty;
  // A zero has no sign: JSON does not keep the one of -0.
  return { value: value + 0, standardUncertainty, interval95: [value - half + 0, value + half + 0] };
}

function written(value: number): string {
  return Number.isNaN(value) ? "no number" : String(value);
}

/**
 * Student quantile for two-sided 95 % coverage. Checked against R 4.2.2 `qt(.975, df)`.
 * Throws OutOfDomain if `degreesOfFreedom` is not greater than zero.
 */
export function coverageFactor(degreesOfFreedom: number): number {
  if (!(degreesOfFreedom > 0)) {
    throw new OutOfDomain({
      found: `${degreesOfFreedom} degrees of freedom`,
      needed: "more than 0",
      mend: "Measure at least one point more than there are unknowns",
    });
  }
  // Beyond this many the normal quantile is the same to 1e-9 and the iteration of the library stalls at infinity.
  return degreesOfFreedom > 1e9 ? NORMAL_975 : quantile(0.975, degreesOfFreedom);
}

/** 97.5 % point of the standard normal distribution; R 4.2.2 `qnorm(.975)`. */
export const NORMAL_975 = 1.959963984540054;

/** The same quantity in a unit `factor` times smaller or greater; interval ends keep their order. */
export function scaled({ value, standardUncertainty, interval95: [low, high] }: Uncertain, factor: number): Uncertain {
  const ends: [number, number] = factor < 0 ? [high * factor, low * factor] : [low * factor, high * factor];
  return { value: value * factor, standardUncertainty: standardUncertainty * Math.abs(factor), interval95: ends };
}

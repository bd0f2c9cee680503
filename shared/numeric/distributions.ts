import { OutOfDomain } from "../quantity/problem.ts";

/** A source of numbers evenly spread over [0, 1). */
export type Uniform = () => number;

/** How an input of a measurement is spread about 0; see `draw`. */
export type Spread =
  | { readonly kind: "normal"; readonly standardUncertainty: number }
  | { readonly kind: "student"; readonly scale: number; readonly degreesOfFreedom: number }
  | { readonly kind: "rectangular"; readonly halfWidth: number }
  | { readonly kind: "triangular"; readonly halfWidth: number }
  | { readonly kind: "trapezoidal"; readonly halfWidth: number; readonly topShare: number };

/**
 * One draw from a distribution about 0. Student's is that of a mean whose standard uncertainty `scale` was itself estimated
 * with few degrees of freedom: below 3 of them it has no standard deviation.
 *
 * Source   JCGM 101:2008, 6.4.2 rectangular, 6.4.4 trapezoidal (`topShare`: its flat top over its base, β), 6.4.5
 *          triangular, 6.4.7 normal, 6.4.9 Student.
 * Throws   OutOfDomain for degrees of freedom not greater than 0.
 */
export function draw(spread: Spread, uniform: Uniform): number {
  switch (spread.kind) {
    case "normal":
      return spread.standardUncertainty === 0 ? 0 : spread.standardUncertainty * normalDraw(uniform);
    case "student":
      return spread.scale === 0 ? 0 : spread.scale * studentDraw(spread.degreesOfFreedom, uniform);
    case "rectangular":
      return spread.halfWidth * (2 * uniform() - 1);
    case "triangular":
      return spread.halfWidth * (uniform() + uniform() - 1);
    case "trapezoidal":
      return (
        (spread.halfWidth / 2) *
        ((1 + spread.topShare) * (2 * uniform() - 1) + (1 - spread.topShare) * (2 * uniform() - 1))
      );
  }
}

/** One draw from the normal distribution with mean 0 and standard deviation 1. Box & Muller, Ann. Math. Stat. 29 (1958) 610. */
export function normalDraw(uniform: Uniform): number {
  return Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** One draw from Student's distribution; infinite degrees of freedom give the normal one. */
export function studentDraw(degreesOfFreedom: number, uniform: Uniform): number {
  return normalDraw(uniform) * scaleDraw(degreesOfFreedom, uniform);
}

/** Beyond this many degrees of freedom a scale is known so well that its doubt does not show in a million draws. */
const KNOWN_SCALE = 1e6;

/**
 * sqrt(ν/χ²_ν): what a standard uncertainty estimated with ν degrees of freedom may be off by, as a factor. One factor for
 * inputs that were judged by one common scatter.
 */
export function scaleDraw(degreesOfFreedom: number, uniform: Uniform): number {
  if (!(degreesOfFreedom > 0)) {
    throw new OutOfDomain({ found: `${degreesOfFreedom} degrees of freedom`, needed: "more than 0", mend: "" });
  }
  if (degreesOfFreedom > KNOWN_SCALE) return 1;
  return Math.sqrt(degreesOfFreedom / (2 * gammaDraw(degreesOfFreedom / 2, uniform)));
}

/**
 * One draw from the gamma distribution of scale 1.
 * Source   Marsaglia & Tsang, ACM Transactions on Mathematical Software 26 (2000) 363; shapes under 1 by its section 6.
 */
function gammaDraw(shape: number, uniform: Uniform): number {
  if (shape < 1) return gammaDraw(shape + 1, uniform) * (1 - uniform()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normalDraw(uniform);
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(1 - uniform()) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

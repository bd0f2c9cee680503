import { OutOfDomain } from "../quantity/problem.ts";

/** A source of numbers evenly spread over [0, 1). */
export type Uniform = () => number;

/**
 * One draw from the normal distribution with mean 0 and standard deviation 1.
 *
 * Source   Box & Muller, Annals of Mathematical Statistics 29 (1958) 610, from memory.
 */
export function normalDraw(uniform: Uniform): number {
  return Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/**
 * One draw from the rectangular distribution with mean 0 and standard deviation 1, from −√3 to √3.
 *
 * Source   JCGM 101:2008, 6.4.2, from memory.
 */
export function rectangularDraw(uniform: Uniform): number {
  return Math.sqrt(3) * (2 * uniform() - 1);
}

/** Beyond this many degrees of freedom a scale is known so well that its doubt does not show in a million draws. */
const KNOWN_SCALE = 1e6;

/**
 * sqrt(ν/χ²_ν): what a standard uncertainty estimated with ν degrees of freedom may be off by, as a factor. One factor for
 * inputs that were judged by one common scatter; times a normal draw it is Student's (JCGM 101:2008, 6.4.9).
 *
 * Throws   OutOfDomain for degrees of freedom not greater than 0.
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

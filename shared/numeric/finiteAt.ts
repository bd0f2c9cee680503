import { OutOfDomain } from "../quantity/problem.ts";

/** f(x) for a search that a gap in the function would lead astray. Throws OutOfDomain `numeric.not-finite`. */
export function finiteAt(f: (x: number) => number, x: number): number {
  const value = f(x);
  if (Number.isFinite(value)) return value;
  throw new OutOfDomain({
    code: "numeric.not-finite",
    found: `the function at ${x} is ${value}`,
    needed: "a finite number",
    mend: "",
  });
}

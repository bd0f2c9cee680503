import { OutOfDomain } from "../quantity/problem.ts";

/** Points for a straight line, with the standard uncertainties that are known. */
export interface LineData {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Standard uncertainty of each x, unit of x. */
  readonly uncertaintyX?: readonly number[] | undefined;
  /** Standard uncertainty of each y, unit of y. */
  readonly uncertaintyY?: readonly number[] | undefined;
}

export interface CheckedLineData {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** Zero where not given. */
  readonly ux: readonly number[];
  /** Zero where only doubt in x was given, 1 where none was given at all. */
  readonly uy: readonly number[];
  /** Whether any uncertainty was given. */
  readonly weighted: boolean;
}

/** `data` with equal lengths, finite numbers and a doubt at every point; throws OutOfDomain otherwise. */
export function checkedLineData({ x, y, uncertaintyX, uncertaintyY }: LineData, fewest: number): CheckedLineData {
  const weighted = uncertaintyX !== undefined || uncertaintyY !== undefined;
  const ux = uncertaintyX ?? x.map(() => 0);
  const uy = uncertaintyY ?? x.map(() => (weighted ? 0 : 1));
  if (x.length < fewest) refuse(`${x.length} points`, `at least ${fewest}`);
  for (const [name, column] of Object.entries({ y, uncertaintyX: ux, uncertaintyY: uy })) {
    if (column.length !== x.length) refuse(`${x.length} x and ${column.length} ${name}`, "as many of each");
  }
  x.forEach((xi, i) => {
    if (!Number.isFinite(xi) || !Number.isFinite(y[i]!)) refuse(`point ${i} at (${xi}, ${y[i]})`, "finite numbers");
    const doubts = [ux[i]!, uy[i]!];
    const sound = doubts.every((u) => u >= 0 && Number.isFinite(u)) && doubts.some((u) => u > 0);
    if (!sound) refuse(`point ${i} with uncertainties ${doubts.join(" and ")}`, "finite, not negative, not both 0");
  });
  return { x, y, ux, uy, weighted };
}

function refuse(found: string, needed: string): never {
  throw new OutOfDomain({ code: "numeric.line-data", found, needed, mend: "" });
}

import fc from "fast-check";
import { expect, test } from "vitest";
import { InputProblem, OutOfDomain } from "../../shared/quantity/problem.ts";
import { COMPUTATIONS } from "./predictionComputations.ts";

type Path = readonly (string | number)[];

/** Places of all numbers in a document. */
function numberPaths(value: unknown, path: Path = []): Path[] {
  if (typeof value === "number") return [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    numberPaths(inner, [...path, Array.isArray(value) ? Number(key) : key]),
  );
}

function withNumber(document: object, path: Path, change: (before: number) => number): object {
  const copy = structuredClone(document);
  const parent = path
    .slice(0, -1)
    .reduce<Record<string | number, unknown>>(
      (inner, key) => inner[key] as Record<string | number, unknown>,
      copy as Record<string | number, unknown>,
    );
  const last = path.at(-1)!;
  parent[last] = change(parent[last] as number);
  return copy;
}

/** What may come in the place of a number: out of scale, of the other sign, nothing, or no number at all. */
const change = fc.oneof(
  fc.constantFrom(0, -0, 1, -1, 1e-300, 1e300, -1e300, Number.NaN, Number.POSITIVE_INFINITY).map((put) => () => put),
  fc.double({ min: -6, max: 6, noNaN: true }).map((power) => (before: number) => before * 10 ** power),
  fc.double({ min: 0.3, max: 3, noNaN: true }).map((factor) => (before: number) => before * factor),
  fc.constant((before: number) => -before),
);

/** Numbers that are not finite anywhere in `value`, with their place. */
function notFinite(value: unknown, at = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${at} ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${at}/${key}`));
}

test.each(COMPUTATIONS)("$name takes its example, so that what follows tries the computation", ({ valid, run }) => {
  const result = run(valid);
  expect(result).not.toBeNull();
  expect(notFinite(result)).toEqual([]);
});

test.each(COMPUTATIONS)(
  "$name answers any numbers with finite ones, or refuses in words that name what it found",
  ({ valid, run }) => {
    const paths = numberPaths(valid);
    const changes = fc.array(fc.tuple(fc.constantFrom(...paths), change), { minLength: 1, maxLength: 3 });
    fc.assert(
      fc.property(changes, (all) => {
        const input = all.reduce((document, [path, by]) => withNumber(document, path, by), valid);
        try {
          expect(notFinite(run(input))).toEqual([]);
        } catch (error) {
          if (!(error instanceof InputProblem || error instanceof OutOfDomain)) throw error;
          expect(error.problem.found.length).toBeGreaterThan(5);
          expect(error.message).not.toMatch(/undefined|NaN/);
        }
      }),
      { numRuns: 150 },
    );
  },
);

import fc from "fast-check";
import { expect } from "vitest";

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const openScrew = fc.record({
  family: fc.constant("wageningen-b" as const),
  blades: fc.integer({ min: 2, max: 7 }),
  areaRatio: between(0.3, 1.05),
  pitchRatio: between(0.5, 1.4),
});

export const nozzleScrew = fc.record({
  family: fc.constantFrom("ka-4-70-19a" as const, "ka-5-75-19a" as const),
  pitchRatio: between(0.6, 1.4),
});

/** Least and greatest area ratio tested with 2 to 7 blades: Carlton, Marine Propellers and Propulsion, table 6.4. */
const TESTED: readonly (readonly [number, number])[] = [
  [0.3, 0.3],
  [0.35, 0.8],
  [0.4, 1],
  [0.45, 1.05],
  [0.5, 0.8],
  [0.55, 0.85],
];

export const testedScrew = openScrew.map((screw) => {
  const [low, high] = TESTED[screw.blades - 2]!;
  return { ...screw, areaRatio: low + ((screw.areaRatio - 0.3) / 0.75) * (high - low) };
});

/** Every number anywhere in `value`. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === "number") yield value;
  else if (typeof value === "object" && value !== null)
    for (const inner of Object.values(value)) yield* numbersIn(inner);
}

export function expectFinite(result: unknown) {
  for (const number of numbersIn(result)) expect(Number.isFinite(number)).toBe(true);
}

/** `found` is `expected` within `tolerance` of it. */
export function expectClose(found: number, expected: number, tolerance = 1e-9) {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected));
}

/** Advance speeds, m/s: rest, and next to it, among them. */
export const speed = fc.oneof(fc.constant(0), between(0, 20), between(0, 1e-6));

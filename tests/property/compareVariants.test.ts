import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import type { SpreadChoice } from "../../shared/model/comparison.ts";
import { coverageOfRatio, type MountedVariants } from "../coverage/ratioCoverage.ts";
import { relative } from "../relative.ts";
import { plateau, runOf } from "../unit/comparePlateaus.ts";
import { runs } from "../unit/compareRuns.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const side = fc.record({
  coefficients: fc.array(between(0.05, 0.5), { minLength: 1, maxLength: 5 }),
  powerCoefficient: between(0.05, 0.4),
  independent: between(0.001, 0.1),
  degreesOfFreedom: between(1, 30),
  calibration: between(0, 0.05),
  own: between(0, 0.05),
});

type Side = typeof side extends fc.Arbitrary<infer S> ? S : never;

const variantOf = (name: string, { coefficients, calibration, own, ...sketch }: Side) =>
  runs(name, coefficients, { ...sketch, common: { calibration, [`diameter:${name}`]: own } });

test("exchanging baseline and variant inverts every ratio and its interval and leaves the p-values", () => {
  fc.assert(
    fc.property(side, side, (a, b) => {
      const [A, B] = [variantOf("a", a), variantOf("b", b)];
      const there = compareVariants({ baseline: A, variant: B });
      const back = compareVariants({ baseline: B, variant: A });
      for (const name of ["thrustCoefficientRatio", "equalShaftPowerRatio", "staticMeritRatio"] as const) {
        const [forward, reverse] = [there[name]!, back[name]!];
        expect(reverse.value).toSatisfy(relative(1 / forward.value, 1e-10));
        expect(reverse.interval95[0]).toSatisfy(relative(1 / forward.interval95[1], 1e-8));
        expect(reverse.interval95[1]).toSatisfy(relative(1 / forward.interval95[0], 1e-8));
        expect(Math.abs(reverse.pValue - forward.pValue)).toBeLessThan(1e-9);
      }
    }),
  );
});

test("a coefficient scale that all runs share does not matter", () => {
  fc.assert(
    fc.property(side, side, between(0.1, 10), (a, b, factor) => {
      const plain = compareVariants({ baseline: variantOf("a", a), variant: variantOf("b", b) });
      const times = (s: Side) => ({ ...s, coefficients: s.coefficients.map((k) => k * factor) });
      const scaled = compareVariants({ baseline: variantOf("a", times(a)), variant: variantOf("b", times(b)) });
      expect(scaled.thrustCoefficientRatio.value).toSatisfy(relative(plain.thrustCoefficientRatio.value, 1e-9));
      expect(scaled.thrustCoefficientRatio.interval95[1]).toSatisfy(
        relative(plain.thrustCoefficientRatio.interval95[1], 1e-7),
      );
    }),
  );
});

/** Plateaus of a run with some scatter: thrust a power of the electrical power, commands a step apart. */
const plateauRun = fc.record({
  factor: between(0.2, 3),
  exponent: between(0.5, 0.8),
  scatter: fc.array(between(-0.03, 0.03), { minLength: 6, maxLength: 6 }),
});

const POWERS = [8, 15, 27, 45, 70, 100];

const poweredVariant = (
  name: string,
  { factor, exponent, scatter }: typeof plateauRun extends fc.Arbitrary<infer R> ? R : never,
  more = 1,
) => {
  const plateaus = POWERS.map((P, i) =>
    plateau({
      ...{ thrust: more * factor * P ** exponent * Math.exp(scatter[i]!), electricalPower: P, command: 1500 + 70 * i },
    }),
  );
  return { name, reductions: [runOf(plateaus, { independent: 0.01 })] };
};

const BY_LAW = ["thrustAtEqualElectricalPower", "thrustAtEqualThrottle"] as const;

test("at equal power and throttle too, exchange inverts, and a factor on every thrust of a side is one on the ratio", () => {
  fc.assert(
    fc.property(plateauRun, plateauRun, between(0.5, 2), (a, b, more) => {
      const [A, B] = [poweredVariant("a", a), poweredVariant("b", b)];
      const there = compareVariants({ baseline: A, variant: B }).answers;
      const back = compareVariants({ baseline: B, variant: A }).answers;
      const grown = compareVariants({ baseline: A, variant: poweredVariant("b", b, more) }).answers;
      for (const name of BY_LAW) {
        const [forward, reverse, scaled] = [there, back, grown].map(
          (answers) => answers.find(({ quantity }) => quantity === name)!.ratio!,
        );
        expect(reverse!.value).toSatisfy(relative(1 / forward!.value, 1e-9));
        expect(reverse!.interval95[0]).toSatisfy(relative(1 / forward!.interval95[1], 1e-7));
        expect(scaled!.value).toSatisfy(relative(more * forward!.value, 1e-9));
      }
    }),
  );
});

test("the interval leaves 1 out exactly where the p-value is below 5 %", () => {
  fc.assert(
    fc.property(side, side, (a, b) => {
      const { interval95, pValue } = compareVariants({
        baseline: variantOf("a", a),
        variant: variantOf("b", b),
      }).thrustCoefficientRatio;
      fc.pre(Math.abs(pValue - 0.05) > 1e-6);
      expect(interval95[0] > 1 || interval95[1] < 1).toBe(pValue < 0.05);
    }),
  );
});

describe("the 95 % interval over the true ratio of simulated stands", () => {
  const SIMULATIONS = 4000;

  const coverage = (stand: Partial<MountedVariants>, seed: number, spreads: SpreadChoice = "tested") =>
    coverageOfRatio({ mountings: [2, 2], times: 1, ...stand }, [spreads], { simulations: SIMULATIONS, seed })[0]!;

  /**
   * 400000 draws with numpy 2.4.6 `default_rng(1)`, t and F by scipy 1.17.1: the pooled t interval where the F test of the
   * variances has p of 0.1 or more, else Welch's.
   */
  test.each([
    { count: 2, times: 1, expected: 0.9546 },
    { count: 3, times: 1, expected: 0.9533 },
    { count: 4, times: 1, expected: 0.9524 },
    { count: 5, times: 1, expected: 0.9512 },
    { count: 2, times: 2, expected: 0.945 },
    { count: 3, times: 2, expected: 0.9433 },
    { count: 2, times: 3, expected: 0.9316 },
    { count: 5, times: 3, expected: 0.9423 },
  ])(
    "holds it in 93 to 97 of 100, and claims what is not there in as many as are left: $count mountings each, one spread $times that of the other",
    ({ count, times, expected }) => {
      const found = coverage({ mountings: [count, count], times }, 100 * count + times);
      // The tolerance is three standard errors of the simulation.
      expect(Math.abs(found - expected)).toBeLessThan(3 * Math.sqrt((expected * (1 - expected)) / SIMULATIONS));
      expect(expected).toBeGreaterThan(0.93);
      expect(1 - expected).toBeLessThan(times === 1 ? 0.05 : 0.07);
    },
  );

  // The same draws: Student's and Welch's interval where they are asked for, Welch's cautious for two and two.
  test.each([
    { count: 2, spreads: "separate" as const, expected: 0.9765 },
    { count: 3, spreads: "separate" as const, expected: 0.9649 },
    { count: 2, spreads: "pooled" as const, expected: 0.95 },
  ])("where spreads are asked for $spreads, $count mountings each, in $expected", ({ count, spreads, expected }) => {
    const found = coverage({ mountings: [count, count] }, count, spreads);
    expect(Math.abs(found - expected)).toBeLessThan(3 * Math.sqrt((expected * (1 - expected)) / SIMULATIONS));
  });

  test.each([
    { what: "one mounting against two", mountings: [1, 2] as const },
    { what: "one mounting against five", mountings: [1, 5] as const },
    { what: "two mountings against five", mountings: [2, 5] as const },
    { what: "single runs, if re-mounting changes nothing", mountings: [1, 1] as const, remounting: 0, inside: 0.01 },
  ])("in 93 to 97 of 100 with $what", ({ what, ...stand }) => {
    const found = coverage(stand, what.length);
    expect(found).toBeGreaterThan(0.93);
    expect(found).toBeLessThan(0.97);
  });

  test.each([2, 3, 5])(
    "in no fewer than 93 of 100 where the scatter inside the runs is all there is, %i mountings",
    (count) => {
      const found = coverage({ mountings: [count, count], remounting: 0, inside: 0.01 }, 30 + count);
      expect(found).toBeGreaterThan(0.93);
    },
  );
});

import { describe, expect, test } from "vitest";
import { trendOf } from "../../shared/compare/trend/trendOf.ts";
import { anovaOf } from "../../shared/compare/variance/anovaOf.ts";
import { Anova, type AnovaRequest } from "../../shared/model/anova.ts";
import { Trend, TrendRequest } from "../../shared/model/trend.ts";
import { relative } from "../relative.ts";
import { facts } from "./comparePlateaus.ts";
import { type RunSketch, run } from "./compareRuns.ts";

type Known = Parameters<typeof facts>[0];

/** A run with a thrust coefficient and what is known of it. */
const studied = (thrustCoefficient: number, known: Known, sketch: Partial<RunSketch> = {}) => ({
  facts: facts(known),
  reduction: run({ thrustCoefficient, ...sketch }),
  variant: "",
});

const codes = ({ warnings }: { readonly warnings: readonly { readonly code: string }[] }) =>
  warnings.map(({ code }) => code);

describe("trend", () => {
  const over = (points: readonly (readonly [number, number])[], request: Partial<TrendRequest> = {}) =>
    trendOf(
      points.map(([pitchRatio, K_T]) => studied(K_T, { pitchRatio })),
      TrendRequest.parse({ factor: "pitchRatio", ...request }),
    );

  const RISING = [
    [0.6, 0.1],
    [0.6, 0.101],
    [0.8, 0.121],
    [0.8, 0.119],
    [1, 0.142],
    [1, 0.14],
    [1.2, 0.169],
    [1.2, 0.171],
  ] as const;

  test("fits the document that is sent", () => {
    const found = over(RISING);
    expect(Trend.parse(found)).toEqual(found);
  });

  test("of a quantity that only rises says that no optimum shows inside the range", () => {
    const { sentence, order } = over(RISING);
    expect(order).toBe(1);
    expect(sentence).toMatch(
      /^The thrust coefficient rises by \d+ % \(95 %: \d+ to \d+ %\) from 0\.6 to 1\.2, along a line\. No optimum shows inside the range\.$/,
    );
  });

  test("whose vertex lies outside what was measured says so", () => {
    const bent = [0.6, 0.7, 0.8, 0.9, 1, 1.1].flatMap((x) => {
      const truth = Math.exp(-((x - 1.3) ** 2));
      return [[x, 0.2 * truth * 1.002] as const, [x, 0.2 * truth * 0.998] as const];
    });
    const { sentence, optimum } = over(bent, { order: 2 });
    expect(optimum!.inside).toBe(false);
    expect(optimum!.at.value).toBeCloseTo(1.3, 2);
    expect(sentence).toMatch(/rises by .* No optimum inside the range\.$/);
  });

  test("that chance can make is not claimed", () => {
    const flat = RISING.map(([x], i) => [x, [0.2, 0.21, 0.205, 0.198, 0.211, 0.199, 0.2, 0.207][i]!] as const);
    expect(over(flat).sentence).toMatch(/^No change of thrust coefficient with the pitch ratio can be claimed/);
  });

  test("a power law is straight where both are in logarithms", () => {
    const runs = [10, 20, 40, 80, 160, 320].map((microns, i) =>
      studied(0.2 * microns ** -0.15 * (1 + 0.002 * (i % 2)), { roughness: microns * 1e-6 }),
    );
    const found = trendOf(runs, TrendRequest.parse({ factor: "roughness", scale: "logarithmic" }));
    expect(found.order).toBe(1);
    const [first, last] = [found.band[0]!, found.band.at(-1)!];
    expect(Math.log(last.value / first.value) / Math.log(last.x / first.x)).toBeCloseTo(-0.15, 2);
  });

  test("runs of equal pitch that lie far from the curve against their spread are told, and widen the band", () => {
    const wild = [
      [0.6, 0.1],
      [0.6, 0.1002],
      [0.8, 0.14],
      [0.8, 0.1402],
      [1, 0.12],
      [1, 0.1202],
      [1.2, 0.16],
      [1.2, 0.1602],
    ] as const;
    const found = over(wild, { order: 1 });
    expect(codes(found)).toContain("compare.lack-of-fit");
    expect(found.degreesOfFreedom).toBe(2);
  });

  test("another property that changes among runs of one pitch is named", () => {
    const runs = RISING.map(([pitchRatio, K_T], i) =>
      studied(K_T, { pitchRatio, finish: i % 2 === 0 ? "sanded" : "as printed" }),
    );
    const found = trendOf(runs, TrendRequest.parse({ factor: "pitchRatio" }));
    expect(codes(found)).toEqual(["compare.varies-inside"]);
  });

  test("what all runs share is told apart from the band", () => {
    const shared = { independent: 0.01, common: { "thrust-calibration:1": 0.03 } };
    const runs = RISING.map(([pitchRatio, K_T]) => studied(K_T, { pitchRatio }, shared));
    const found = trendOf(runs, TrendRequest.parse({ factor: "pitchRatio" }));
    expect(found.sharedUncertainty).toBeCloseTo(0.03, 12);
    expect(found.points[0]!.standardUncertainty / found.points[0]!.value).toBeCloseTo(0.01, 12);
  });

  test.each([
    { points: RISING.slice(0, 2), request: {}, code: "compare.trend-few-values", why: "one pitch ratio" },
    { points: RISING.slice(0, 4), request: { order: 2 }, code: "compare.trend-order", why: "two values for a bend" },
    { points: RISING, request: { quantity: "staticMerit" }, code: "compare.quantity-not-known", why: "no shaft power" },
    {
      points: RISING,
      request: { quantity: "thrustAtThrottle" },
      code: "compare.quantity-not-known",
      why: "no commands",
    },
  ] as const)("is refused with $code: $why", ({ points, request, code }) => {
    expect(() => over(points, request)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code }) }),
    );
  });
});

describe("analysis of variance", () => {
  const REQUEST: AnovaRequest = { factors: ["finish", "pitchRatio"], quantity: "thrustCoefficient" };
  const cell = (finish: string, pitchRatio: number, ...values: readonly number[]) =>
    values.map((K_T) => studied(K_T, { finish, pitchRatio }));

  const BALANCED = [
    ...cell("as printed", 0.8, 0.1, 0.102),
    ...cell("as printed", 1.2, 0.15, 0.153),
    ...cell("sanded", 0.8, 0.16, 0.163),
    ...cell("sanded", 1.2, 0.24, 0.245),
  ];

  test("fits the document, and its effects are those of the logarithms", () => {
    const found = anovaOf(BALANCED, REQUEST);
    expect(Anova.parse(found)).toEqual(found);
    expect(found.design).toBe("balanced");
    expect(found.rows.map(({ kind }) => kind)).toEqual(["factor", "factor", "interaction", "residual", "total"]);
    // Ratio of the geometric means of the finishes: (0.16 0.163 0.24 0.245 / 0.1 0.102 0.15 0.153)^(1/4), by hand.
    expect(found.effects[0]).toMatchObject({ factor: "finish", level: "sanded", against: "as printed" });
    expect(found.effects[0]!.ratio.value).toSatisfy(
      relative(((0.16 * 0.163 * 0.24 * 0.245) / (0.1 * 0.102 * 0.15 * 0.153)) ** 0.25, 1e-10),
    );
    expect(found.cells.find(({ levels }) => levels[0]!.level === "sanded")!.mean!.value).toSatisfy(
      relative(Math.sqrt(0.16 * 0.163), 1e-12),
    );
    expect(found.sentence).toContain("changes with finish (p under 0.001) and pitch ratio (p under 0.001)");
    expect(found.sentence).toContain("can not be claimed (interaction");
  });

  test("an interaction is told, so that one effect is not read for all", () => {
    const crossed = [...BALANCED.slice(0, 6), ...cell("sanded", 1.2, 0.18, 0.182)];
    expect(anovaOf(crossed, REQUEST).sentence).toContain("read the cell means, not one effect for all");
  });

  test("without repeats there is no interaction, and that is said", () => {
    const single = BALANCED.filter((_, i) => i % 2 === 0);
    const three = [...single, ...cell("as printed", 1, 0.12), ...cell("sanded", 1, 0.199)];
    const found = anovaOf(three, REQUEST);
    expect(found.withInteraction).toBe(false);
    expect(codes(found)).toContain("compare.no-interaction");
    expect(found.sentence).toContain("can not be told from these runs");
  });

  test("an empty cell and runs that do not state a factor are told", () => {
    const found = anovaOf([...BALANCED.slice(0, 6), ...cell("sanded", 1, 0.2), studied(0.2, {})], REQUEST);
    expect(found.design).toBe("emptyCells");
    expect(found.cells.filter(({ runs }) => runs === 0).map(({ mean }) => mean)).toEqual([null, null]);
    expect(codes(found)).toContain("compare.run-left-out");
  });

  test("one propeller a cell speaks of these propellers, not of their shape", () => {
    const propellers = BALANCED.map((one, i) => ({
      ...one,
      facts: { ...one.facts, propeller: `P${Math.floor(i / 2)}` },
    }));
    expect(codes(anovaOf(propellers, REQUEST))).toEqual(["compare.one-propeller-each"]);
  });

  test("a pitch that changes inside the cells of another analysis is named", () => {
    const found = anovaOf(BALANCED, { factors: ["finish"], quantity: "thrustCoefficient" });
    expect(codes(found)).toEqual(["compare.varies-inside"]);
    expect(found.rows.map(({ kind }) => kind)).toEqual(["factor", "residual", "total"]);
  });

  test.each([
    { runs: BALANCED.slice(0, 4), why: "one finish only" },
    { runs: [BALANCED[0]!, BALANCED[2]!, BALANCED[4]!], why: "as many runs as levels" },
    { runs: [...cell("a", 1, 0.2, 0.2), ...cell("b", 1.2, 0.3, 0.3)], why: "factors that change together" },
  ])("is refused: $why", ({ runs }) => {
    expect(() => anovaOf(runs, REQUEST)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "compare.anova-design" }) }),
    );
  });
});

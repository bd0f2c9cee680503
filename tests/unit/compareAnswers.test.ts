import { describe, expect, test } from "vitest";
import { compareStudy } from "../../shared/compare/compareStudy.ts";
import { compareAll, compareVariants } from "../../shared/compare/compareVariants.ts";
import type { Comparison } from "../../shared/model/comparison.ts";
import { ComparisonAnswer, ComparisonQuestion } from "../../shared/model/comparisonRequest.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { relative } from "../relative.ts";
import { facts, plateau, runOf } from "./comparePlateaus.ts";
import { run, runs } from "./compareRuns.ts";

const answer = ({ answers }: Comparison, quantity: string) => answers.find((one) => one.quantity === quantity)!;

const powered = (name: string, factor: number, power: readonly number[], extra: Partial<Reduction> = {}) => ({
  name,
  reductions: [
    {
      ...runOf(
        power.map((P, i) => plateau({ thrust: factor * P ** (2 / 3), electricalPower: P, command: 1500 + 80 * i })),
      ),
      ...extra,
    },
  ],
});

const POWER = [10, 20, 40, 80];

describe("power saved at equal thrust", () => {
  test("is the inverse of the merit ratio, and the sentence tells the saving", () => {
    // P = C_P (T/K_T)^(3/2): 1.1/1.5^1.5 = 0.598763 by hand.
    const found = compareVariants({
      baseline: runs("as printed", [0.2, 0.201, 0.199], { powerCoefficient: 0.2 }),
      variant: runs("sanded", [0.3, 0.301, 0.299], { powerCoefficient: 0.22 }),
    });
    const saved = answer(found, "shaftPowerAtEqualThrust");
    expect(saved.ratio!.value).toSatisfy(relative(1.1 / 1.5 ** 1.5, 1e-4));
    expect(saved.ratio!.value * found.staticMeritRatio!.value).toBeCloseTo(1, 12);
    expect(saved.sentence).toMatch(
      /^sanded takes 0\.59\d+ times the shaft power of as printed at equal thrust \(95 %: .*\), a saving of 40 % \(39 to 41 %\), three mountings each\.$/,
    );
  });

  test("without shaft power says whose is not known", () => {
    const found = compareVariants({ baseline: runs("a", [0.2]), variant: runs("b", [0.3]) });
    const saved = answer(found, "shaftPowerAtEqualThrust");
    expect(saved.ratio).toBeNull();
    expect(saved.why).toMatch(/^The shaft power of run-\d+\.csv is not known/);
    expect(saved.sentence).toBe(saved.why);
  });
});

describe("equal electrical power and throttle", () => {
  test("powers that do not overlap give no ratio, and the reason holds both ends", () => {
    const found = compareVariants({ baseline: powered("a", 1, POWER), variant: powered("b", 1, [100, 150, 200, 300]) });
    const { ratio, why } = answer(found, "thrustAtEqualElectricalPower");
    expect(ratio).toBeNull();
    expect(why).toContain("one starts at 100 W, another ends at 80.0 W");
  });

  test("a power outside what both measured is computed only where asked for, and flagged", () => {
    const pair = { groups: [powered("a", 1, POWER), powered("b", 1.2, POWER)], baseline: "a" };
    const [found] = compareAll({ ...pair, electricalPower: 120 });
    const outside = answer(found!, "thrustAtEqualElectricalPower");
    expect(outside.condition).toMatchObject({ value: 120, low: 10, high: 80, extrapolated: true });
    expect(outside.sentence).toContain("This lies outside the 10.0 W to 80.0 W that both sides measured");
    expect(found!.warnings.map(({ code }) => code)).toContain("compare.condition-outside");
    const [inside] = compareAll({ ...pair, electricalPower: 50 });
    expect(answer(inside!, "thrustAtEqualElectricalPower").condition).toMatchObject({ extrapolated: false });
  });

  test("the ratio is told all the way from the least to the greatest common power", () => {
    const found = compareVariants({ baseline: powered("a", 1, POWER), variant: powered("b", 1.2, [20, 40, 80, 160]) });
    const { along } = answer(found, "thrustAtEqualElectricalPower");
    expect(along[0]!.at).toBeCloseTo(20, 9);
    expect(along.at(-1)!.at).toBeCloseTo(80, 9);
    for (const { value } of along) expect(value).toBeCloseTo(1.2, 9);
  });

  test("two plateaus are too few, and the run is named", () => {
    const found = compareVariants({ baseline: powered("a", 1, [10, 20]), variant: powered("b", 1, POWER) });
    expect(answer(found, "thrustAtEqualElectricalPower").why).toMatch(
      /holds 2 plateaus with a known electrical power; three/,
    );
  });

  test("commands in different units are not set equal", () => {
    const inUnit = (unit: string) => ({ columns: [{ column: 0, role: "command" as const, unit, header: "throttle" }] });
    const found = compareVariants({
      baseline: powered("a", 1, POWER, inUnit("us")),
      variant: powered("b", 1, POWER, inUnit("%")),
    });
    expect(answer(found, "thrustAtEqualThrottle").why).toContain("different units");
  });
});

test("with different diameters the thrusts as built go by the fourth power, and their diameters' doubt is out of it", () => {
  const at = (diameter: number) => ({ diameter, common: { [`diameter:p:${diameter}`]: 0.02 } });
  const found = compareVariants({
    baseline: runs("small", [0.2], at(0.07)),
    variant: runs("large", [0.2], at(0.076)),
  });
  const { ratio, asBuilt } = answer(found, "thrustAtEqualRate");
  // (76/70)^4 = 33362176/24010000 = 1.3895117 by hand.
  expect(asBuilt!.value / ratio!.value).toSatisfy(relative(1.3895117, 1e-7));
  expect(ratio!.standardUncertainty).toBeGreaterThan(0.02);
  expect(asBuilt!.standardUncertainty).toBe(0);
});

test("the parts of the doubt add up in squares to that of the ratio", () => {
  const found = compareVariants({
    baseline: runs("a", [0.2, 0.206, 0.197], { independent: 0.005, common: { "diameter:a": 0.01 } }),
    variant: runs("b", [0.3, 0.306, 0.296], { independent: 0.004 }),
  });
  const { parts, standardUncertainty, value } = found.thrustCoefficientRatio;
  expect(Math.hypot(parts.withinRuns, parts.remounting!, parts.shared)).toSatisfy(
    relative(standardUncertainty / value, 1e-12),
  );
  expect(parts.shared).toBeCloseTo(0.01, 12);
  expect(parts.withinRuns).toSatisfy(relative(Math.sqrt((0.005 ** 2 + 0.004 ** 2) / 3), 1e-9));
});

test("all pairs are the baseline's first, then the others, with p-values adjusted over all of them", () => {
  const groups = [runs("a", [0.2, 0.201]), runs("b", [0.25, 0.251]), runs("c", [0.3, 0.301])];
  const found = compareAll({ groups, baseline: "b", pairs: "all" });
  expect(found.map(({ baseline, variant }) => `${variant.name} over ${baseline.name}`)).toEqual([
    "a over b",
    "c over b",
    "c over a",
  ]);
  const p = found.map(({ thrustCoefficientRatio: ratio }) => ratio);
  const least = p.reduce((a, b) => (b.pValue < a.pValue ? b : a));
  expect(least.adjustedPValue).toSatisfy(relative(3 * least.pValue, 1e-12));
});

test("a study of single runs answers, labelled as resting on the scatter inside them, and fits its document", () => {
  const studied = (name: string, factor: number, finish: string, pack: string) => ({
    name,
    runs: powered(name, factor, POWER).reductions.map((reduction) => ({ reduction, facts: facts({ finish, pack }) })),
  });
  const groups = [studied("as printed", 1, "as printed", "A"), studied("sanded", 1.3, "sanded", "B")];
  const question = ComparisonQuestion.parse({ robustness: true });
  const found = compareStudy({ groups, baseline: "as printed", question });
  expect(ComparisonAnswer.parse(found)).toEqual(found);
  const [comparison] = found.comparisons;
  expect(comparison!.thrustCoefficientRatio.basis).toBe("withinRun");
  expect(comparison!.warnings.map(({ code }) => code)).toEqual(
    expect.arrayContaining(["compare.single-run", "compare.confounded"]),
  );
  expect(found.robustness[0]!.rows.some(({ check }) => check === "leaveOneOut")).toBe(false);
});

test("a property that differs inside one side of a pair is named beside the ratio", () => {
  const studied = (name: string, known: Parameters<typeof facts>[0][]) => ({
    name,
    runs: known.map((one, i) => ({ reduction: run({ thrustCoefficient: 0.2 + i / 1000 }), facts: facts(one) })),
  });
  const [comparison] = compareStudy({
    groups: [
      studied("pitch 0.8", [{ pitchRatio: 0.8, finish: "sanded" }]),
      studied("pitch 1", [
        { pitchRatio: 1, finish: "sanded" },
        { pitchRatio: 1, finish: "as printed" },
      ]),
    ],
    baseline: "pitch 0.8",
    question: ComparisonQuestion.parse({}),
  }).comparisons;
  const told = comparison!.warnings.find(({ code }) => code === "compare.varies-inside")!;
  expect(told.message).toContain("Runs of one pitch ratio differ in finish as well (sanded, as printed)");
});

test("without any spread the robustness of an answer is told all the same", () => {
  const group = (name: string, K_T: number) => ({
    name,
    runs: [run({ thrustCoefficient: K_T }), run({ thrustCoefficient: K_T })].map((reduction) => ({
      reduction,
      facts: facts(),
    })),
  });
  const found = compareStudy({
    groups: [group("a", 0.2), group("b", 0.3)],
    baseline: "a",
    question: ComparisonQuestion.parse({ robustness: true }),
  });
  expect(ComparisonAnswer.parse(found)).toEqual(found);
  expect(found.comparisons[0]!.warnings.map(({ code }) => code)).toContain("compare.identical-runs");
});

import { describe, expect, test } from "vitest";
import { compareAll, compareVariants } from "../../shared/compare/compareVariants.ts";
import { Comparison } from "../../shared/model/comparison.ts";
import type { Plateau } from "../../shared/model/reduction.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { relative } from "../relative.ts";
import { run, runs } from "./compareRuns.ts";

const PRINTED = [0.151, 0.153, 0.1495];
const SANDED = [0.245, 0.2475, 0.2462];

const codes = (found: Comparison) => found.warnings.map((warning) => warning.code);

test("a comparison fits the document that is sent", () => {
  const found = compareVariants({
    baseline: runs("as printed", PRINTED, { powerCoefficient: 0.2 }),
    variant: runs("sanded", SANDED, { powerCoefficient: 0.21 }),
  });
  expect(Comparison.parse(found)).toEqual(found);
  expect(found.warnings).toEqual([]);
});

test("a comparison without any doubt still fits the document, with a point for an interval", () => {
  const found = compareVariants({ baseline: runs("a", [0.2]), variant: runs("b", [0.3]) });
  expect(Comparison.parse(found)).toEqual(found);
  expect(found.thrustCoefficientRatio.interval95).toEqual([
    found.thrustCoefficientRatio.value,
    found.thrustCoefficientRatio.value,
  ]);
  expect(found.thrustCoefficientRatio.pValue).toBe(0);
});

describe("sentence", () => {
  test("names ratio, interval, conditions and mountings", () => {
    // scipy 1.17.1 `ttest_ind(log, log)`: 1.628946 (1.596199 to 1.662365).
    const { sentence } = compareVariants({ baseline: runs("as printed", PRINTED), variant: runs("sanded", SANDED) });
    expect(sentence).toMatch(
      /^sanded gives 1\.629 times the thrust of as printed at equal rotation rate \(95 %: 1\.596 to 1\.662\), three mountings each\.$/,
    );
  });

  test("counts mountings by name where they differ", () => {
    const { sentence } = compareVariants({
      baseline: runs("printed", PRINTED),
      variant: runs("sanded", SANDED.slice(1)),
    });
    expect(sentence).toContain("two mountings of sanded and three mountings of printed");
  });

  test("says that no difference can be claimed where the interval holds 1", () => {
    const { sentence } = compareVariants({
      baseline: runs("a", [0.2, 0.21, 0.19]),
      variant: runs("b", [0.205, 0.2, 0.21]),
    });
    expect(sentence).toMatch(
      /^No difference in thrust between b and a can be claimed at equal rotation rate: the ratio is 1\.03 \(95 %: 0\.\d+ to 1\.\d+\), three mountings each\.$/,
    );
  });

  test("says what single runs rest on", () => {
    const doubt = { independent: 0.01 };
    const { sentence } = compareVariants({ baseline: runs("a", [0.2], doubt), variant: runs("b", [0.3], doubt) });
    expect(sentence).toContain("rests on the scatter inside one run each; re-mounting was not tested");
  });

  test("says whose spread stands in for a single mounting", () => {
    const found = compareVariants({ baseline: runs("as printed", PRINTED), variant: runs("sanded", [0.246]) });
    expect(found.thrustCoefficientRatio.basis).toBe("pooledReplicates");
    expect(found.sentence).toContain(
      "one mounting of sanded, whose spread is taken to be that of the three mountings of as printed",
    );
  });

  test("speaks of the coefficient alone where diameters differ", () => {
    const found = compareVariants({
      baseline: runs("small", PRINTED, { diameter: 0.07 }),
      variant: runs("large", SANDED, { diameter: 0.076 }),
    });
    expect(found.sentence).toMatch(/^large gives 1\.629 times the thrust coefficient of small \(95 %/);
    // (76/70)^4 = 1.38951 by hand, times 1.6287.
    const [warning] = found.warnings;
    expect(warning).toMatchObject({ code: "compare.different-diameters" });
    expect(warning!.message).toContain("ratio of thrusts is 2.26");
  });

  test("claims nothing that does not stand after the correction for several pairs, and says so", () => {
    const names = ["b", "c", "d", "e", "f"];
    const near = [0.2031, 0.2038, 0.2024];
    const [first] = compareAll({
      groups: [runs("a", [0.2, 0.201, 0.199]), ...names.map((name) => runs(name, near))],
      baseline: "a",
    });
    expect(first!.thrustCoefficientRatio.pValue).toBeLessThan(0.05);
    expect(first!.thrustCoefficientRatio.adjustedPValue).toBeGreaterThan(0.05);
    expect(first!.sentence).toMatch(/^No difference .* Alone, the interval leaves 1 out; among 5 pairs/);
  });
});

describe("doubt", () => {
  test("a common cause that both sides share cancels, one that they do not share is added in full", () => {
    const shared = { independent: 0.005, degreesOfFreedom: 1e9, common: { "thrust-calibration": 0.03 } };
    const own = (key: string) => ({ ...shared, common: { ...shared.common, [key]: 0.01 } });
    const ratioOf = (a: object, b: object) =>
      compareVariants({ baseline: runs("a", [0.2], a), variant: runs("b", [0.2], b) }).thrustCoefficientRatio;
    expect(ratioOf(shared, shared).standardUncertainty).toSatisfy(relative(0.005 * Math.SQRT2, 1e-9));
    expect(ratioOf(own("diameter:a"), own("diameter:b")).standardUncertainty).toSatisfy(
      relative(Math.hypot(0.005 * Math.SQRT2, 0.01 * Math.SQRT2), 1e-9),
    );
  });

  test("with replicates a cause shared by the runs of one side alone is added, as their spread can not show it", () => {
    const bare = compareVariants({ baseline: runs("a", PRINTED), variant: runs("b", SANDED) }).thrustCoefficientRatio;
    const full = compareVariants({
      baseline: runs("a", PRINTED, { common: { "diameter:a": 0.01 } }),
      variant: runs("b", SANDED, { common: { "diameter:b": 0.02 } }),
    }).thrustCoefficientRatio;
    expect(full.standardUncertainty / full.value).toSatisfy(
      relative(Math.hypot(bare.standardUncertainty / bare.value, 0.01, 0.02), 1e-9),
    );
    expect(full.degreesOfFreedom).toBeGreaterThan(bare.degreesOfFreedom);
  });

  test("with replicates a cause of one run alone is part of the spread and not counted twice", () => {
    const tared = (name: string, coefficients: readonly number[]) => ({
      name,
      reductions: coefficients.map((thrustCoefficient, i) =>
        run({ thrustCoefficient, common: { [`tare:${name}${i}`]: 0.001 } }),
      ),
    });
    const bare = compareVariants({ baseline: runs("a", PRINTED), variant: runs("b", SANDED) }).thrustCoefficientRatio;
    const full = compareVariants({ baseline: tared("a", PRINTED), variant: tared("b", SANDED) }).thrustCoefficientRatio;
    expect(full.interval95).toEqual(bare.interval95);
  });

  test("replicates that agree by luck give no narrower interval than the doubt inside them", () => {
    const lucky = { independent: 0.01 };
    const found = compareVariants({ baseline: runs("a", [0.2, 0.2], lucky), variant: runs("b", [0.3, 0.3001], lucky) });
    // u² = 2 · 0.01²/2, ν = 2 by Welch-Satterthwaite from 1 and 1; t(.975, 2) = 4.30265 (R 4.2.2).
    const ratio = found.thrustCoefficientRatio;
    expect(ratio.standardUncertainty / ratio.value).toSatisfy(relative(0.01, 1e-9));
    expect(ratio.interval95[1] / ratio.value).toSatisfy(relative(Math.exp(4.3026527297495 * 0.01), 1e-9));
    expect(codes(found)).toEqual(["compare.identical-runs", "compare.closer-than-doubt"]);
  });

  test("the summary carries the geometric mean, its whole doubt and the spread between mountings", () => {
    const { variant, baseline } = compareVariants({
      baseline: runs("a", [0.2], { independent: 0.01 }),
      variant: runs("b", [0.2, 0.242], { common: { calibration: 0.03 } }),
    });
    expect(baseline).toMatchObject({ runs: 1, runToRun: null });
    expect(variant.thrustCoefficient.value).toSatisfy(relative(0.22, 1e-12));
    // ln 1.21/sqrt 2 by hand.
    expect(variant.runToRun).toSatisfy(relative(Math.log(1.21) / Math.SQRT2, 1e-12));
    expect(variant.thrustCoefficient.standardUncertainty / 0.22).toSatisfy(
      relative(Math.hypot(Math.log(1.21) / 2, 0.03), 1e-9),
    );
  });
});

describe("warnings", () => {
  const doubt = { independent: 0.01 };
  const compared = (a: object, b: object) =>
    compareVariants({
      baseline: runs("a", PRINTED, { ...doubt, ...a }),
      variant: runs("b", SANDED, { ...doubt, ...b }),
    });

  test.each([
    [{ density: 998.6 }, { density: 1025 }, "compare.different-fluids"],
    [{ viscosity: 1.0e-6 }, { viscosity: 1.3e-6 }, "compare.different-fluids"],
    [
      { powerCoefficient: 0.2, powerSource: "torque" },
      { powerCoefficient: 0.2, powerSource: "motorConstants" },
      "compare.power-sources",
    ],
    [{ powerCoefficient: 0.2 }, {}, "compare.power-sources"],
  ])("%o against %o is warned of as %s", (a, b, code) => {
    expect(codes(compared(a, b))).toContain(code);
  });

  test("without the shaft power of one side there is no ratio at equal power", () => {
    const found = compared({ powerCoefficient: 0.2 }, {});
    expect(found.equalShaftPowerRatio).toBeNull();
    expect(found.staticMeritRatio).toBeNull();
  });

  test("a single run on each side is named", () => {
    const found = compareVariants({ baseline: runs("a", [0.2], doubt), variant: runs("b", [0.3], doubt) });
    expect(found.warnings.map(({ code, where }) => [code, where])).toEqual([
      ["compare.single-run", "a"],
      ["compare.single-run", "b"],
    ]);
  });

  test("the same file on both sides is named", () => {
    const found = compareVariants({
      baseline: runs("a", [0.2], { sha256: "one" }),
      variant: runs("b", [0.2], { sha256: "one" }),
    });
    expect(codes(found)).toContain("compare.same-file");
  });

  test("points used although they can not be are told again beside the ratio, once for each run", () => {
    const point = { used: true, shaftPower: null, electricalPower: null } as Plateau;
    const impossible = { ...point, thrust: uncertain(30, 0.1), momentumLimit: 20 };
    const fine = { ...point, thrust: uncertain(10, 0.1), momentumLimit: 20 };
    const found = compareVariants({
      baseline: runs("a", [0.2], { plateaus: [impossible, fine, { ...impossible, used: false }] }),
      variant: runs("b", [0.2], { plateaus: [fine] }),
    });
    const told = found.warnings.filter((warning) => warning.code === "compare.impossible-points");
    expect(told).toHaveLength(1);
    expect(told[0]!.message).toContain("1 of the 2 points used");
  });
});

describe("refusals", () => {
  test.each([
    { groups: [runs("a", [0.2])], code: "compare.one-group" },
    { groups: [runs("a", [0.2]), runs("a", [0.3])], code: "compare.name-twice" },
    { groups: [runs("a", [0.2]), runs("b", [])], code: "compare.no-runs" },
    { groups: [runs("a", [0.2]), runs("b", [0.3, 0.31], { sha256: "same" })], code: "compare.file-twice" },
    { groups: [runs("c", [0.2]), runs("b", [0.3])], code: "compare.no-baseline" },
    { groups: [runs("a", [0.2]), runs("b", [0.3], { density: 1.2 })], code: "compare.air-and-water" },
    { groups: [runs("a", [0.2]), runs("b", [-0.3])], code: "compare.not-positive" },
  ])("$code", ({ groups, code }) => {
    expect(() => compareAll({ groups, baseline: "a" })).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code }) }),
    );
  });
});

import { expect, test } from "vitest";
import { whatHalves } from "../../shared/bench/whatHalves.ts";
import type { Budget, BudgetRow, MonteCarlo } from "../../shared/model/budget.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { budgetTables, checkText, leadingCauses } from "../../web/views/bench/budgetModel.ts";

const row = (more: Partial<BudgetRow>): BudgetRow => ({
  ...{ name: "calibration of the thrust", source: "calibration", kind: "B", distribution: "normal", key: "k" },
  ...{ inputUncertainty: 0.01, inputUnit: "1", sensitivity: 0.2, standardUncertainty: 0.002, share: 0.8 },
  ...{ degreesOfFreedom: null, ...more },
});
const DIAMETER = row({
  ...{ name: "diameter", source: "diameter", inputUncertainty: 1e-4, inputUnit: "m", sensitivity: -10 },
  ...{ standardUncertainty: 0.001, share: 0.2 },
});
const SCATTER = row({
  ...{ name: "scatter of the thrust within the plateaus", source: "plateauScatter", kind: "A", inputUnit: "N" },
  ...{ standardUncertainty: 0.002, share: 0.8, degreesOfFreedom: 6 },
});

const ROWS = [row({}), DIAMETER];
const BUDGET: Budget = {
  quantity: "thrustCoefficient",
  result: uncertain(0.2, Math.hypot(0.002, 0.001)),
  coverageFactor: 1.96,
  degreesOfFreedom: null,
  rows: ROWS,
  halving: whatHalves({ rows: ROWS, plateaus: 9 }),
};

test("a cause is shown with its share, what it is known to, what it moves the coefficient by, and its kind", () => {
  const [table, ...others] = budgetTables({ thrustCoefficient: BUDGET, powerCoefficient: null, staticMerit: null });
  expect(others).toEqual([]);
  expect(table!.bars[1]).toEqual({
    ...{
      name: "diameter",
      kind: "B",
      input: "0.10\u202fmm",
      effect: "0.50\u202f%",
      share: 0.2,
      shareText: "20\u202f%",
    },
    degreesOfFreedom: "many",
  });
  expect(table!.combined).toContain("1.1\u202f% times 1.96 for many effective degrees of freedom");
});

test("causes of under 1 % are folded away and counted", () => {
  const rows = [row({ share: 0.99 }), row({ name: "a", share: 0.006 }), row({ name: "b", share: 0.004 })];
  const thrustCoefficient = { ...BUDGET, rows };
  const [table] = budgetTables({ thrustCoefficient, powerCoefficient: null, staticMerit: null });
  expect(table!.bars.length).toBe(1);
  expect(table!.small).toMatchObject({
    text: "2 smaller causes, together 1\u202f%",
    bars: [{ name: "a" }, { name: "b" }],
  });
});

test("the leading causes stand in one line, the greatest first", () => {
  expect(leadingCauses(BUDGET)).toBe("calibration of the thrust 80\u202f%, diameter 20\u202f%");
  expect(leadingCauses({ ...BUDGET, rows: [row({ share: 0.001 })] })).toContain("under 1\u202f%");
});

test.each([
  { why: "a calibration that rules", rows: ROWS, says: /^Calibrate the thrust to 0\.2\d\s%/, single: true },
  {
    why: "plateaus that scatter",
    rows: [SCATTER],
    says: /^Hold each plateau|^Run \d+ plateaus in place of 9/,
    single: true,
  },
  {
    why: "two that are alike",
    rows: [row({}), { ...DIAMETER, standardUncertainty: 0.002, share: 0.5 }],
    says: /^No single improvement halves the interval; two together do: .*0\.50\s%.*0\.050\smm/,
    single: false,
  },
  {
    why: "three that are alike",
    rows: [row({}), { ...DIAMETER, standardUncertainty: 0.002 }, row({ name: "voltage", standardUncertainty: 0.002 })],
    says: /If .* and .* were known exactly, 58 % of the standard uncertainty would still be left/,
    single: false,
  },
  { why: "no doubt", rows: [], says: /no doubt/, single: false },
])("what halves the interval of $why", ({ rows, says, single }) => {
  const halving = whatHalves({ rows, plateaus: 9 });
  expect(halving.sentence).toMatch(says);
  expect(halving.single).toBe(single);
});

const RESULT: MonteCarlo["results"][number] = {
  ...{ quantity: "thrustCoefficient", mean: 0.2, standardUncertainty: 0.002, tolerance: 0.0005, difference: 0.0001 },
  ...{ interval95: [0.196, 0.204], shortest95: [0.196, 0.204], firstOrder95: [0.1961, 0.2039] },
  ...{ agrees: true, settled: true },
};

test("a check that agrees says so, and one that does not names the coefficient", () => {
  expect(checkText({ draws: 20_000, seed: 1, results: [RESULT] }).answer).toBe(
    "20\u202f000 draws (seed 1) confirm the intervals.",
  );
  const apart = checkText({ draws: 20_000, seed: 1, results: [{ ...RESULT, agrees: false, settled: false }] });
  expect(apart.answer).toContain("other intervals for K_T");
  expect(apart.rows[0]!.verdict).toContain("More draws");
  expect(checkText({ draws: 2000, seed: 1, results: [] }).answer).toContain("can not tell");
});

import { expect, test } from "vitest";
import { compareAll } from "../../shared/compare/compareVariants.ts";
import { freeStyle, reductionsOf, shownGroups, variantGroups } from "../../web/views/variants/variantGroups.ts";
import { meanStaticMerit, meanThrustCoefficient, meanTorqueCoefficient } from "../../web/views/variants/variantMean.ts";
import { overlayChart } from "../../web/views/variants/variantsChart.ts";
import {
  assignmentRows,
  baselineOf,
  distinctWarnings,
  forest,
  spreadLines,
  variantsAnswer,
  variantsQuestion,
  variantTable,
} from "../../web/views/variants/variantsModel.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const RUNS = [
  runOf("s2", { variant: "sanded", mounting: "2" }),
  runOf("s1", { variant: "sanded", mounting: "1" }),
  runOf("p1", { variant: "as printed", mounting: "1" }),
  runOf("p2", { variant: "as printed", mounting: "2" }),
  runOf("loose"),
];
const COEFFICIENTS: Record<string, number> = { s1: 0.2, s2: 0.21, p1: 0.1, p2: 0.104, loose: 0.3 };
const made = (id: string) => reductionOf({ thrustCoefficient: COEFFICIENTS[id]!, fileName: `${id}.csv` });
const GROUPS = variantGroups(RUNS, made);
const COMPARISONS = compareAll({
  groups: GROUPS.map((group) => ({ name: group.name, reductions: reductionsOf(group) })),
  baseline: "as printed",
});

test("runs are grouped by variant in the order of names, members by mounting, loose runs in none", () => {
  expect(GROUPS.map(({ name, style, members }) => [name, style, members.map((one) => one.id)])).toEqual([
    ["as printed", 0, ["p1", "p2"]],
    ["sanded", 1, ["s1", "s2"]],
  ]);
});

test.each([
  {
    names: ["as printed", "sanded"],
    baseline: "as printed",
    question: "How much did “sanded” gain over “as printed”?",
  },
  { names: ["a", "b", "c"], baseline: "b", question: "How much does each variant gain over “b”?" },
  { names: ["a"], baseline: "a", question: "How do the variants compare?" },
  { names: [], baseline: null, question: "How do the variants compare?" },
])("$names against $baseline asks: $question", ({ names, baseline, question }) => {
  expect(variantsQuestion(names, baseline)).toBe(question);
});

test("the answer is the sentence of the comparison itself", () => {
  expect(variantsAnswer(COMPARISONS, GROUPS)).toBe(COMPARISONS[0]!.sentence);
});

test.each([
  { groups: [], says: "No run has a variant yet" },
  { groups: GROUPS.slice(0, 1), says: "All runs belong to one variant, “as printed”" },
  { groups: variantGroups(RUNS.slice(0, 1), made), says: "Only one run has a variant, “sanded”" },
  { groups: variantGroups(RUNS, () => null), says: "not all reduced yet" },
])("without a comparison the answer says what is needed: $says", ({ groups, says }) => {
  expect(variantsAnswer([], groups)).toContain(says);
});

test("the baseline is the one chosen if it has a result, else the one measured first, and says why", () => {
  const named = (groups: typeof GROUPS, chosen: string | null, runs = RUNS) => {
    const found = baselineOf(groups, runs, chosen);
    return found === null ? null : [found.group.name, found.because];
  };
  expect(named(GROUPS, "as printed")).toEqual(["as printed", "Chosen by hand."]);
  // By name "as printed" would lead.
  expect(named(GROUPS, "gone")).toEqual(["sanded", "Its first run was entered first."]);
  const days: Record<string, string> = { s1: "2026-05-03", s2: "2026-05-03", p1: "2026-05-02", p2: "2026-05-04" };
  const dated = RUNS.filter(({ id }) => id in days).map((run) => ({
    ...run,
    document: { ...run.document, day: days[run.id]! },
  }));
  expect(named(GROUPS, null, dated)).toEqual(["as printed", "It was measured first, on 2026-05-02."]);
  const half = variantGroups(RUNS, (id) => (id.startsWith("s") ? null : made(id)));
  expect(named(half, "sanded")).toEqual(["as printed", "Its first run was entered first."]);
  expect(named([], null)).toBeNull();
});

test("the table starts with the baseline and tells ratio, interval and what the doubt rests on", () => {
  const { columns, rows } = variantTable(COMPARISONS, GROUPS);
  const cellsOf = (name: string) => rows.find((row) => row.name.includes(name))!.cells;
  expect(columns).toEqual([
    { name: "as printed", style: 0, isBaseline: true },
    { name: "sanded", style: 1, isBaseline: false },
  ]);
  expect(cellsOf("Mountings")).toEqual(["2", "2"]);
  expect(cellsOf("rests on")[1]).toBe("several mountings of both variants");
  expect(spreadLines(COMPARISONS)).toEqual([
    "Spread from mounting to mounting, as printed and sanded: one for both variants, from 2.8 % and 3.4 %; chance alone sets them so far apart in 86 of 100 cases.",
  ]);
  const [baseline, sanded] = cellsOf("equal rotation rate");
  const { value, interval95 } = COMPARISONS[0]!.thrustCoefficientRatio;
  const [shown, low, high] = sanded!
    .match(/[\d.]+(?=[ )])/g)!
    .filter((text) => text !== "95")
    .map(Number);
  expect(baseline).toBe("1");
  expect(shown).toBeCloseTo(value, 2);
  expect(low).toBeCloseTo(interval95[0], 2);
  expect(high).toBeCloseTo(interval95[1], 2);
});

test("with several variants the p-values are shown with Holm's correction beside them", () => {
  const groups = variantGroups([...RUNS, runOf("x", { variant: "other" })], (id) => made(id === "x" ? "loose" : id));
  const comparisons = compareAll({
    groups: groups.map((group) => ({ name: group.name, reductions: reductionsOf(group) })),
    baseline: "as printed",
  });
  const cells = variantTable(comparisons, groups).rows.find((row) => row.name.startsWith("p:"))!.cells;
  expect(cells[1]).toMatch(/; .* by Holm$/);
});

test("the axis of ratios holds every interval, no change and the claim", () => {
  const plot = forest(COMPARISONS, GROUPS, 3.5);
  const known = COMPARISONS[0]!.answers.filter(({ ratio }) => ratio !== null);
  expect(plot.rows.map((row) => row.of)).toEqual(known.map(({ title }) => title));
  expect(plot.rows.map((row) => row.of)).toContain("shaft power at equal thrust");
  // Of many pairs the three that hang on no condition are drawn.
  const many = Array.from({ length: 3 }, () => COMPARISONS[0]!);
  expect(forest(many, GROUPS, 3.5).rows).toHaveLength(9);
  // Without a claim the axis needs to hold none.
  expect(forest(COMPARISONS, GROUPS, null).high).toBeLessThan(plot.high);
  for (const inside of [1, 3.5, ...plot.rows.flatMap((row) => row.interval)]) {
    expect(inside).toBeGreaterThan(plot.low);
    expect(inside).toBeLessThan(plot.high);
  }
  expect(plot.ticks.length).toBeGreaterThanOrEqual(3);
  expect(plot.ticks.length).toBeLessThanOrEqual(7);
});

test("ratios that need shaft power are left away where it is not known", () => {
  const groups = variantGroups(RUNS, (id) => ({ ...made(id), powerFit: null, powerCoefficient: null }));
  const comparisons = compareAll({
    groups: groups.map((group) => ({ name: group.name, reductions: reductionsOf(group) })),
    baseline: "as printed",
  });
  expect(forest(comparisons, groups, 2).rows.map(({ of }) => of)).not.toContain("static merit");
  expect(variantTable(comparisons, groups).rows.find((row) => row.name.includes("equal shaft power"))!.cells[1]).toBe(
    "shaft power not known",
  );
});

test("a fit line passes through the thrust of its variant's mean coefficient", () => {
  const fit = overlayChart(GROUPS).series.find((series) => series.id === "fit-sanded")!;
  const { x, y } = fit.points.at(-1)!;
  // T = K_T ρ n² D⁴ with ρ D⁴ = 0.1; mean K_T of 0.20 and 0.21 is their geometric mean.
  expect(y).toBeCloseTo(Math.sqrt(0.2 * 0.21) * 0.1 * (x / 60) ** 2, 9);
});

test("the mean of one mounting is that mounting; of several it is the geometric mean", () => {
  const one = [made("s1")];
  expect(meanThrustCoefficient(one)).toEqual(one[0]!.thrustCoefficient);
  expect(meanTorqueCoefficient(one)).toEqual(one[0]!.torqueCoefficient);
  expect(meanStaticMerit(one)).toEqual(one[0]!.staticMerit);
  const two = [made("s1"), made("s2")];
  expect(meanThrustCoefficient(two)!.value).toBeCloseTo(Math.sqrt(0.2 * 0.21), 12);
  expect(meanTorqueCoefficient(two)!.value).toBeCloseTo(0.1 / (2 * Math.PI), 12);
  const merits = two.map((run) => run.staticMerit!.value);
  expect(meanStaticMerit(two)!.value).toBeCloseTo(Math.sqrt(merits[0]! * merits[1]!), 12);
});

test("there is no mean without runs, and no torque coefficient where no run knows its shaft power", () => {
  expect(meanThrustCoefficient([])).toBeNull();
  expect(meanTorqueCoefficient([reductionOf({ powerCoefficient: null })])).toBeNull();
  expect(meanStaticMerit([reductionOf({ powerCoefficient: null })])).toBeNull();
});

test("runs without a variant come first in the list, because they wait for one", () => {
  expect(assignmentRows(RUNS).map((row) => row.id)).toEqual(["loose", "p1", "p2", "s1", "s2"]);
});

test("variants with several mountings come first and are on show until others are chosen", () => {
  const groups = variantGroups([runOf("k", { variant: "a scale" }), ...RUNS], () => null);
  expect(groups.map((group) => group.name)).toEqual(["as printed", "sanded", "a scale"]);
  expect(shownGroups(groups, null).map((group) => group.name)).toEqual(["as printed", "sanded"]);
  expect(shownGroups(groups, new Set(["a scale"])).map((group) => group.name)).toEqual(["a scale"]);
  expect(shownGroups(groups, new Set(["gone"]))).toHaveLength(2);
  expect(shownGroups(groups.slice(1), null)).toHaveLength(2);
});

test("what stands beside the variants gets the first style that none of them has", () => {
  expect(freeStyle([{ style: 0 }, { style: 2 }])).toBe(1);
  expect(freeStyle([])).toBe(0);
});

test("of many variants the furthest from the baseline speaks and the others are counted", () => {
  const more = [
    ...RUNS,
    ...["u", "v"].flatMap((name) => [1, 2].map((m) => runOf(`${name}${m}`, { variant: name, mounting: `${m}` }))),
  ];
  const K: Record<string, number> = { ...COEFFICIENTS, u1: 0.1, u2: 0.103, v1: 0.4, v2: 0.41 };
  const groups = variantGroups(more, (id) => reductionOf({ thrustCoefficient: K[id]!, fileName: `${id}.csv` }));
  const comparisons = compareAll({
    groups: groups.map((group) => ({ name: group.name, reductions: reductionsOf(group) })),
    baseline: "as printed",
  });
  expect(variantsAnswer(comparisons, groups)).toMatch(
    /^2 of 3 variants differ from as printed beyond chance\. Furthest from it: [vV] gives /,
  );
});

test("a warning that several comparisons share is shown once", () => {
  const warned = { ...COMPARISONS[0]!, warnings: [{ code: "compare.x", message: "Shared.", where: "a" }] };
  const other = { ...warned, warnings: [...warned.warnings, { code: "compare.y", message: "Its own.", where: "b" }] };
  expect(distinctWarnings([warned, other]).map(({ message }) => message)).toEqual(["Shared.", "Its own."]);
});

test("where every pair is on show the rows of the forest name both sides", () => {
  const groups = ["a", "b", "c"].map((name, at) => ({
    name,
    reductions: [1, 2].map((mounting) =>
      reductionOf({ thrustCoefficient: 0.1 * (at + 1) + 0.001 * mounting, fileName: `${name}${mounting}.csv` }),
    ),
  }));
  const all = compareAll({ groups, baseline: "a", pairs: "all" });
  const names = new Set(forest(all, [], 2).rows.map(({ name }) => name));
  expect([...names]).toEqual(["b over a", "c over a", "c over b"]);
});

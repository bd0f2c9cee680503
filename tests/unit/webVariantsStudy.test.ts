import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareAll } from "../../shared/compare/compareVariants.ts";
import { factorTable } from "../../shared/compare/factors/factorTable.ts";
import { mountingPlan } from "../../shared/compare/planning/mountingPlan.ts";
import { robustnessOf } from "../../shared/compare/robustness/robustnessOf.ts";
import type { GroupedRun } from "../../shared/compare/studiedRuns.ts";
import { trendOf } from "../../shared/compare/trend/trendOf.ts";
import { anovaOf } from "../../shared/compare/variance/anovaOf.ts";
import { RunFacts } from "../../shared/model/factor.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { anovaRows, effectRows, interactionPicture } from "../../web/views/variants/anova/anovaModel.ts";
import { factorHeads, shownFactors } from "../../web/views/variants/factors/factorsModel.ts";
import { chosenRuns, filterChoices, groupChoices, groupNames } from "../../web/views/variants/grouping.ts";
import { paretoFront, paretoPicture } from "../../web/views/variants/pictures/paretoPicture.ts";
import { ratioPicture } from "../../web/views/variants/pictures/ratioPicture.ts";
import {
  planRequest,
  planRows,
  sheetHead,
  sheetRows,
  spreadSeen,
} from "../../web/views/variants/planner/plannerModel.ts";
import { robustnessRows } from "../../web/views/variants/robustness/robustnessModel.ts";
import { optimumWords, trendPicture } from "../../web/views/variants/trend/trendModel.ts";
import { reductionsOf, variantGroups } from "../../web/views/variants/variantGroups.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const COEFFICIENTS: Record<string, number> = { s1: 0.2, s2: 0.206, p1: 0.1, p2: 0.104 };
const RUNS = Object.keys(COEFFICIENTS).map((id) =>
  runOf(id, { variant: id.startsWith("s") ? "sanded" : "as printed", mounting: id.slice(1) }),
);
const made = (id: string) => reductionOf({ thrustCoefficient: COEFFICIENTS[id]!, fileName: `${id}.csv` });
const GROUPS = variantGroups(RUNS, made);
const COMPARISONS = compareAll({
  groups: GROUPS.map((group) => ({ name: group.name, reductions: reductionsOf(group) })),
  baseline: "as printed",
});
const [PRINTED, SANDED] = GROUPS as [(typeof GROUPS)[number], (typeof GROUPS)[number]];

/** Runs of a finish and a pitch ratio with what is stated of each. */
function study(rows: readonly (readonly [string, number, number])[]): GroupedRun[] {
  return rows.map(([finish, pitchRatio, thrustCoefficient], at) => ({
    variant: `${finish} ${pitchRatio}`,
    facts: RunFacts.parse({ id: `run ${at}`, name: `run ${at}`, finish, pitchRatio, motor: "Motor A" }),
    reduction: reductionOf({ thrustCoefficient, fileName: `run-${at}.csv` }),
  }));
}

describe("ratio against rotation rate", () => {
  it("divides each plateau by what the baseline pushes there, and draws the ratio of the comparison with its band", () => {
    const spec = ratioPicture(GROUPS, PRINTED, COMPARISONS);
    const mean = Math.sqrt(0.1 * 0.104);
    const points = spec.series.find(({ id }) => id === "ratio-sanded")!.points;
    expect(points.length).toBeGreaterThan(3);
    for (const { y, note } of points) expect(y).toBeCloseTo((note!.startsWith("s1") ? 0.2 : 0.206) / mean, 3);
    const [level] = spec.series.find(({ id }) => id === "level-sanded")!.points;
    expect(level!.y).toBeCloseTo(COMPARISONS[0]!.thrustCoefficientRatio.value, 12);
  });
});

describe("the front of thrust against power", () => {
  const point = fc.record({
    x: fc.double({ min: 0, max: 100, noNaN: true }),
    y: fc.double({ min: 0, max: 50, noNaN: true }),
  });

  it("holds just the points that none beats, in order of power", () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 30 }), (points) => {
        const front = paretoFront(points);
        const beaten = (one: { x: number; y: number }) =>
          points.some(({ x, y }) => x <= one.x && y >= one.y && (x < one.x || y > one.y));
        for (const one of front) expect(beaten(one)).toBe(false);
        for (const one of points) {
          if (!beaten(one)) expect(front).toContainEqual({ x: one.x, y: one.y });
        }
        for (const [at, one] of front.entries()) if (at > 0) expect(one.x).toBeGreaterThan(front[at - 1]!.x);
      }),
    );
  });

  it("is drawn over the measured points of every variant", () => {
    const { series } = paretoPicture(GROUPS, "shaftPower");
    expect(series.map(({ id }) => id)).toEqual(["front", "power-as printed", "power-sanded"]);
    expect(paretoPicture([{ ...SANDED, members: [] }], "shaftPower").series).toEqual([]);
  });
});

describe("groups", () => {
  const facts = study([
    ["as printed", 0.8, 0.1],
    ["sanded", 0.8, 0.2],
    ["sanded", 1.2, 0.25],
  ]).map((one) => ({ ...one.facts, tags: one.facts.finish === "sanded" ? ["june"] : [] }));

  it("are made by the variant, by tags, or by any factor that differs", () => {
    expect(groupChoices(facts).map(({ value }) => value)).toEqual(["variant", "tags", "finish", "pitchRatio"]);
    expect([...groupNames(facts, "finish")]).toEqual([
      ["run 0", "as printed"],
      ["run 1", "sanded"],
      ["run 2", "sanded"],
    ]);
    expect(groupNames(facts, "pitchRatio").get("run 2")).toBe("pitch ratio 1.2");
    expect(groupNames(facts, "variant").size).toBe(0);
  });

  it("are cut down by a tag or a value", () => {
    expect(filterChoices(facts).map(({ value }) => value)).toContain("tag=june");
    expect(chosenRuns(facts, "tag=june").map(({ id }) => id)).toEqual(["run 1", "run 2"]);
    expect(chosenRuns(facts, "finish=as printed").map(({ id }) => id)).toEqual(["run 0"]);
    expect(chosenRuns(facts, "")).toHaveLength(3);
  });
});

describe("what else differs", () => {
  it("names each factor with what it is to the comparison, one cell a variant", () => {
    const runs = study([
      ["as printed", 1, 0.1],
      ["sanded", 1, 0.2],
    ]);
    const table = factorTable(runs.map(({ variant, facts }) => ({ name: variant, runs: [facts] })));
    expect(factorHeads(table)).toEqual(["as printed 1", "sanded 1"]);
    const rows = shownFactors(table);
    expect(rows.find(({ title }) => title === "finish")).toMatchObject({
      role: "what is compared",
      cells: ["as printed", "sanded"],
    });
    expect(rows.find(({ title }) => title === "motor")).toMatchObject({ role: "the same in all", isDoubtful: false });
  });
});

describe("does it hold", () => {
  it("shows the ratio of each way of asking, and how far it is from the answer", () => {
    const side = (group: typeof PRINTED) => ({ name: group.name, reductions: reductionsOf(group) });
    const rows = robustnessRows(robustnessOf({ baseline: side(PRINTED), variant: side(SANDED) }));
    expect(rows[0]!.ratio).toMatch(/^1\.99\d \(/);
    expect(rows.length).toBeGreaterThan(5);
    for (const { agrees } of rows) expect(["yes", "no", "can not be told"]).toContain(agrees);
  });
});

describe("the planner", () => {
  it("pools the spread from mounting to mounting over the variants", () => {
    const seen = spreadSeen(COMPARISONS)!;
    const relative = (name: "baseline" | "variant") => COMPARISONS[0]![name].runToRun!;
    expect(seen.degreesOfFreedom).toBe(2);
    expect(seen.spread).toBeCloseTo(Math.sqrt((relative("baseline") ** 2 + relative("variant") ** 2) / 2), 12);
    expect(spreadSeen([])).toBeNull();
  });

  it("asks for the variants on show and makes a sheet of blanks for each", () => {
    const draft = { difference: 0.05, power: 0.8, paired: false, seed: 7 };
    const request = planRequest(draft, COMPARISONS, { variants: ["as printed", "sanded"], diameter: 0.076 });
    expect(request).toMatchObject({ mountingsSoFar: 2, sheet: { seed: 7, diameter: 0.076 } });
    const plan = mountingPlan({ ...request, runToRun: 0.03 });
    expect(planRows(plan)[0]!.mountings).toBe("2");
    const sheet = plan.sheet!;
    expect(sheetRows(sheet)).toHaveLength(sheet.rows.length);
    expect(sheetRows(sheet)[0]!).toHaveLength(sheetHead(sheet).length);
    expect(sheet.cautions.length).toBeGreaterThan(0);
  });
});

describe("a trend over the pitch ratio", () => {
  const runs = study([
    ["sanded", 0.8, 0.2],
    ["sanded", 0.8, 0.204],
    ["sanded", 1, 0.25],
    ["sanded", 1, 0.252],
    ["sanded", 1.2, 0.29],
    ["sanded", 1.2, 0.294],
  ]);
  const trend = trendOf(runs, { factor: "pitchRatio", quantity: "thrustCoefficient", scale: "linear" });

  it("draws runs, curve with band, and the series of equal blades behind them", () => {
    const spec = trendPicture(trend, () => 0, { blades: 3, areaRatio: 0.5 });
    expect(spec.series.filter(({ kind }) => kind === "measured").flatMap(({ points }) => points)).toHaveLength(6);
    const series = spec.series.find(({ id }) => id === "series")!.points;
    // B3-50 at P/D 0.8 and J 0: K_T 0.3217 (Oosterveld & van Oossanen 1975, table 5).
    expect(series[0]!.y).toBeCloseTo(0.3217, 4);
    expect(trendPicture(trend, () => 0, null).series.some(({ id }) => id === "series")).toBe(false);
  });

  it.each([
    { inside: true, says: "The maximum lies at 1.10 ± 0.04." },
    { inside: false, says: "No maximum lies inside what was measured; the curve would turn at 1.10 ± 0.04." },
  ])("says where the curve turns, and when that lies outside: $inside", ({ inside, says }) => {
    const at = uncertain(1.1, 0.02);
    expect(optimumWords(trend, { kind: "maximum", at, fieller95: null, value: at, inside })).toBe(says);
  });
});

describe("two factors", () => {
  const anova = anovaOf(
    study([
      ["as printed", 0.8, 0.1],
      ["as printed", 0.8, 0.103],
      ["as printed", 1.2, 0.14],
      ["as printed", 1.2, 0.143],
      ["sanded", 0.8, 0.2],
      ["sanded", 0.8, 0.205],
      ["sanded", 1.2, 0.28],
      ["sanded", 1.2, 0.286],
    ]),
    { factors: ["finish", "pitchRatio"], quantity: "thrustCoefficient" },
  );

  it("prints the table of a book: degrees of freedom add up, and F is the ratio of mean squares", () => {
    const rows = anovaRows(anova);
    expect(rows.map(([, degrees]) => Number(degrees))).toEqual([1, 1, 1, 4, 7]);
    const [first] = anova.rows;
    const residual = anova.rows.find(({ kind }) => kind === "residual")!;
    expect(first!.F).toBeCloseTo(first!.meanSquare! / residual.meanSquare!, 9);
    expect(rows.at(-1)!.slice(-1)).toEqual(["–"]);
  });

  it("draws a line a level of the second factor over the levels of the first", () => {
    const spec = interactionPicture(anova)!;
    const lines = spec.series.filter(({ kind }) => kind === "fit");
    expect(lines).toHaveLength(2);
    expect(lines.every(({ points }) => points.length === 2)).toBe(true);
    expect(effectRows(anova)[0]!.name).toMatch(/ over /);
  });
});

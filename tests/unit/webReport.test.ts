import { expect, test } from "vitest";
import { judgedThrustClaim } from "../../shared/compare/claimVerdict.ts";
import { compareAll } from "../../shared/compare/compareVariants.ts";
import { KeptShortlist } from "../../shared/model/shortlistStored.ts";
import type { Vehicle } from "../../shared/model/vehicle/vehicle.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { ApiProblem } from "../../web/api/apiProblem.ts";
import type { ReportBlock } from "../../web/views/report/reportBlocks.ts";
import type { ReportInput } from "../../web/views/report/reportInput.ts";
import { REPORT_SECTIONS, reportAnswer, reportModel } from "../../web/views/report/reportModel.ts";
import { reportPage } from "../../web/views/report/reportPage.ts";
import { recipeWords } from "../../web/views/report/sections/recipeWords.ts";
import { variantGroups } from "../../web/views/variants/variantGroups.ts";
import { overlayChart } from "../../web/views/variants/variantsChart.ts";
import { BOX, listed, REQUIREMENT } from "./shortlistBox.ts";
import { TWO_THRUSTERS, vehicleFrom } from "./vehicleExample.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const NO_PARTS = { propellers: [], motors: [], controllers: [], packs: [], tethers: [], gears: [], instruments: [] };
const RUNS = [runOf("printed 1", { variant: "printed" }), runOf("sanded 1", { variant: "sanded" })];
const REDUCTIONS = new Map([
  ["printed 1", reductionOf({ thrustCoefficient: 0.2, fileName: "a.csv" })],
  ["sanded 1", reductionOf({ thrustCoefficient: 0.3, fileName: "b.csv" })],
]);
const EMPTY_PICTURE = { title: "", x: { label: "", unit: "" }, y: { label: "", unit: "" }, series: [] };

const SHORTLIST = KeptShortlist.parse({
  ...{ name: "Vertical pair", program: "Bollard Bench 1", madeAt: "2026-01-31T12:00:00.000Z", seconds: 2 },
  request: { requirement: REQUIREMENT, box: BOX, rows: 25, misses: 12 },
  result: listed({}),
});
const of = vehicleFrom(TWO_THRUSTERS);
const TWO = { name: "Two thrusters", answered: { state: "answered", of, answer: vehicleAnswer(of) } } as const;

function inputOf(change: Partial<ReportInput> = {}): ReportInput {
  const groups = variantGroups(RUNS, (id) => REDUCTIONS.get(id) ?? null);
  const known = [...REDUCTIONS].map(([name, reduction]) => ({ name: name.split(" ")[0]!, reductions: [reduction] }));
  const comparisons = compareAll({ groups: known, baseline: "printed" });
  return {
    project: { name: "Dabchick", note: "", water: { kind: "fresh", temperature: 291.15 }, invented: true },
    parts: NO_PARTS,
    runs: RUNS,
    reductionOf: (id) => ({ state: "ready", reduction: REDUCTIONS.get(id) ?? null, problem: null, basis: "1" }),
    overview: { answer: comparisons[0]!.sentence, holds: "Holds 2 runs.", driveBasis: "", driveNotes: [], lines: [] },
    variants: {
      ...{ answer: comparisons[0]!.sentence, groups, comparisons, picture: overlayChart(groups) },
      ...{ spreads: "tested", baselineBecause: "Its first run was entered first." },
      claim: judgedThrustClaim(comparisons, { factor: 2, source: "a leaflet" }),
    },
    theory: { answer: "Half of the ideal.", beside: "", heads: ["Variant"], rows: [], picture: null },
    drive: { answer: "No motor.", throttle: 0.6, chosen: [], statedMerit: 0.5, driven: [], picture: EMPTY_PICTURE },
    shortlist: SHORTLIST,
    vehicles: [TWO, { name: "Broken", answered: { state: "refused", of: {} as Vehicle, why: "It has no pack." } }],
    program: "Bollard Bench 1",
    madeAt: "31 January 2026 at 12:00",
    ...change,
  };
}

const NONE = new Set<string>();
const section = (id: string, input: ReportInput) =>
  reportModel(input, NONE).find((one) => one.id === id)!.blocks as readonly ReportBlock[];
const wordsOf = (blocks: readonly ReportBlock[]) =>
  JSON.stringify(blocks.filter(({ kind }) => kind !== "picture" && kind !== "outlines"));

test("every section of a whole project says something, and no number is missing its value", () => {
  for (const { id, title, blocks } of reportModel(inputOf(), NONE)) {
    expect(blocks.length, title).toBeGreaterThan(0);
    expect(wordsOf(blocks), id).not.toMatch(/NaN|undefined|Infinity|\bnull\b|\[object/);
  }
});

test("a project without anything in it still makes a whole report", () => {
  const input = inputOf({
    ...{ runs: [], shortlist: null, vehicles: [] },
    variants: {
      ...{ answer: "No run has a variant yet.", groups: [], comparisons: [], picture: EMPTY_PICTURE },
      ...{ spreads: "tested", claim: null, baselineBecause: "" },
    },
  });
  expect(reportModel(input, NONE).filter(({ blocks }) => blocks.length === 0)).toEqual([]);
  expect(reportAnswer(input)).toContain("little to report");
  expect(reportAnswer(null)).toContain("still being worked out");
});

test("a section that is not wanted is left out, and the others are numbered anew", () => {
  const whole = reportModel(inputOf(), NONE).map(({ title }) => title);
  expect(whole[0]).toBe("1 The project");
  expect(whole).toHaveLength(REPORT_SECTIONS.length);
  const less = reportModel(inputOf(), new Set(["project"])).map(({ title }) => title);
  expect(less[0]).toBe(whole[1]!.replace("2", "1"));
  expect(less).toHaveLength(whole.length - 1);
});

test("invented data is said to be invented, other data is not", () => {
  expect(wordsOf(section("project", inputOf()))).toContain("Nobody measured these numbers");
  const measured = inputOf({ project: { ...inputOf().project, invented: false } });
  expect(wordsOf(section("project", measured))).not.toContain("Nobody measured");
});

test("tables have as many cells in a row as heads", () => {
  for (const { blocks } of reportModel(inputOf(), NONE)) {
    for (const block of blocks) {
      if (block.kind !== "table") continue;
      for (const row of block.rows) expect(row.length, block.label).toBe(block.heads.length);
    }
  }
});

test("a run has its file with the whole hash, and a command that reduces it", () => {
  const { file } = RUNS[0]!.document;
  expect(wordsOf(section("provenance", inputOf()))).toContain(file.sha256);
  expect(wordsOf(section("reproduce", inputOf()))).toContain(`reduce \\"${file.name}\\"`);
});

test("the command of a run names the motor and controller that its shaft power rests on", () => {
  const run = RUNS[0]!;
  const [motorId, controllerId] = ["motor", "controller"];
  const kept = { version: 1, createdAt: "", updatedAt: "" };
  const unstated = { noLoadCurrentSlope: 0, note: "" };
  const motor = {
    name: "M",
    speedConstant: (520 * 2 * Math.PI) / 60,
    resistance: 0.095,
    noLoadCurrent: 0.7,
    ...unstated,
  };
  const input = inputOf({
    runs: [{ ...run, document: { ...run.document, recipe: { ...run.document.recipe, motorId, controllerId } } }],
    parts: {
      ...NO_PARTS,
      motors: [{ ...kept, id: motorId, document: motor }],
      controllers: [{ ...kept, id: controllerId, document: { name: "C", note: "", resistance: 0.008 } }],
    },
  });
  expect(wordsOf(section("reproduce", input))).toContain(
    "--kv 520rpm/V --resistance 0.095ohm --no-load-current 0.7A --controller-resistance 0.008ohm",
  );
});

test("a run that can not be reduced says why", () => {
  const problem = new ApiProblem({ status: 422, code: "bench.no-rate", detail: "No rotation rate." });
  const refused = inputOf({ reductionOf: () => ({ state: "refused", reduction: null, problem, basis: "1" }) });
  expect(wordsOf(section("runs", refused))).toContain("No rotation rate.");
});

test("each caution stands once, and those who decide are named last", () => {
  const [cautions] = section("cautions", inputOf());
  const items = cautions?.kind === "list" ? cautions.items : [];
  expect(new Set(items).size).toBe(items.length);
  for (const words of [/cuts to the bone/, /Lithium packs burn/, /residual-current/]) {
    expect(items.some((item) => words.test(item))).toBe(true);
  }
  expect(items.at(-1)).toMatch(/local electrical code.*data sheets.*qualified person/);
});

test("vehicles stand beside each other, one without an answer says why", () => {
  const words = wordsOf(section("vehicle", inputOf()));
  expect(words).toContain("It has no pack.");
  expect(words).toContain("The vehicles beside each other");
});

const RECIPE = RUNS[0]!.document.recipe;
const span = { start: 1, end: 2.5 };
const RECIPES: readonly (readonly [string, Partial<typeof RECIPE>, string])[] = [
  ["columns", { columns: [{ column: 2, role: "thrust", unit: "gf" }] }, "Columns: 3 thrust (gf)."],
  ["pole pairs", { polePairs: 7 }, "7 pole pairs."],
  [
    "a correction",
    { corrections: { thrust: { factor: 2, offset: 1, relativeUncertainty: 0.005 } } },
    "Correction of thrust: (reading − 1.00000) × 2.00000, factor ± 0.50\u202f% (one standard uncertainty).",
  ],
  ["no tare", { tare: { mode: "none" } }, "No tare is taken off."],
  ["tare windows", { tare: { mode: "windows", windows: [span] } }, "Tare from 1.0000 to 2.5000 s."],
  ["plateaus by hand", { plateaus: { mode: "spans", spans: [span] } }, "Plateaus set by hand: 1.0000 to 2.5000 s."],
  ["a sweep", { plateaus: { mode: "sweep" } }, "A slow ramp, by regression over the whole trace."],
  [
    "a stretch left out",
    { leftOut: [{ ...span, reason: "a knock" }] },
    "Left out: 1.0000 to 2.5000 s, because: a knock",
  ],
  ["a line left out", { leftOut: [{ line: 4, reason: "typed wrong" }] }, "Left out: line 4, because: typed wrong"],
  [
    "one speed",
    { advanceSpeeds: { mode: "constant", speed: 1.2, relativeUncertainty: 0 } },
    "Advance speed stated: 1.20\u202fm/s, no uncertainty stated.",
  ],
  ["the stand", { stand: { shaftImmersion: 0.2 } }, "Stand, as stated: shaft 200\u202fmm under the surface."],
];

test.each(RECIPES)("the recipe tells %s", (_, change, expected) => {
  expect(recipeWords({ ...RUNS[0]!.document, recipe: { ...RECIPE, ...change } })).toContain(expected);
});

test("the saved page loads nothing, runs nothing, and takes a name for text", () => {
  const page = reportPage({ name: '<img src=x> & "Grebe"', sheet: "<article>All</article>", style: "p{margin:0}" });
  expect(page).toContain("<title>&lt;img src=x&gt; &amp; &quot;Grebe&quot;: report</title>");
  expect(page).toContain("default-src 'none'; img-src data:; style-src 'unsafe-inline'");
  expect(page).toContain("<style>\np{margin:0}</style>");
  expect(page).not.toMatch(/<script|<link|https?:/);
});

import { expect, test } from "vitest";
import type { LogInspection } from "../../shared/model/log.ts";
import { ApiProblem } from "../../web/api/apiProblem.ts";
import type { ReductionState } from "../../web/app/reductions.ts";
import { assumedWords, benchAnswer, powerHint, runRows, unitNotes } from "../../web/views/bench/benchModel.ts";
import { coefficientFacts, provenance, scatterText } from "../../web/views/bench/coefficientsModel.ts";
import { residualChart, thrustFitChart } from "../../web/views/bench/fitCharts.ts";
import { plateauTable } from "../../web/views/bench/plateausModel.ts";
import { spanTarget, traceChart, traceSpans } from "../../web/views/bench/traceChart.ts";
import { recipeOf } from "./benchTable.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const ready = (reduction = reductionOf()): ReductionState => ({ state: "ready", reduction, problem: null, basis: "1" });
const refused: ReductionState = {
  state: "refused",
  reduction: null,
  problem: new ApiProblem({ status: 422, code: "bench.no-propeller", detail: "The run has no propeller." }),
  basis: "1",
};

test("the answer gives coefficient, half-width, plateaus and the range of rotation rate", () => {
  const { document } = runOf("sanded");
  expect(benchAnswer(document, ready())).toBe(
    "The thrust coefficient is 0.200 ± 0.004 (3 plateaus, 600 to 1800\u202frpm); static merit 0.714 ± 0.020.",
  );
});

test("a thrust whose unit the log does not give is told beside the number and among the notes, until it is confirmed", () => {
  const use = { column: 1, role: "thrust", unit: "N" } as const;
  const { recipe } = runOf("sanded").document;
  const { document } = runOf("sanded", { confirmed: false, recipe: { ...recipe, columns: [use] } });
  const other = { role: "thrust", unit: "kg", implies: "The largest thrust would be 97 N." };
  const guess = { ...use, reason: "", sure: false, alternatives: [other] };
  const columns = Array.from({ length: use.column + 1 }, () => ({ header: "thrust", name: "thrust", unit: null }));
  const inspection = { guesses: [guess], shape: { columns } } as unknown as LogInspection;
  expect(assumedWords(document, inspection)).toBe(`Assumed, as nobody stated it: thrust written in ${use.unit}.`);
  expect(unitNotes(document, inspection)[0]!.message).toMatch(
    /unit of the thrust.*It may be kg \(The largest thrust would be 97 N\)/,
  );
  const sure = { ...inspection, guesses: [{ ...guess, sure: true }] } as LogInspection;
  for (const [run, seen] of [
    [{ ...document, confirmed: true }, inspection],
    [document, sure],
  ] as const) {
    expect(assumedWords(run, seen)).toBe("");
    expect(unitNotes(run, seen)).toEqual([]);
  }
});

test("a run that can not be reduced says why instead of a number", () => {
  expect(benchAnswer(runOf("sanded").document, refused)).toBe("No coefficients yet. The run has no propeller.");
  expect(benchAnswer(runOf("sanded").document, undefined)).toBe("Reading sanded.csv …");
});

test("runs are listed by variant and mounting, and say what needs a look", () => {
  const runs = [
    runOf("c", { variant: "sanded", mounting: "10" }),
    runOf("b", { variant: "sanded", mounting: "2", confirmed: false }),
    runOf("a", { variant: "as printed", mounting: "1" }),
    runOf("z"),
  ];
  const rows = runRows(runs, (id) => (id === "a" ? refused : ready()));
  expect(rows.map((row) => row.id)).toEqual(["a", "b", "c", "z"]);
  expect(rows.map((row) => row.flags)).toEqual([["no result"], ["columns to confirm"], [], []]);
  expect(rows[0]!.thrustCoefficient).toBe("–");
  expect(rows[3]!.variant).toBe("no variant");
});

test.each([
  { columns: ["thrust"], says: "neither torque nor electrical power" },
  { columns: ["thrust", "current", "voltage"], says: "choose the motor" },
])("without a power coefficient the screen says what would give one: $says", ({ columns, says }) => {
  const reduction = {
    ...reductionOf({ powerCoefficient: null }),
    columns: columns.map((role, column) => ({ column, role: role as "thrust", unit: "N", header: role })),
  };
  expect(powerHint(reduction, runOf("a").document)).toContain(says);
});

test("an exponent that holds 2 agrees with theory, an intercept that leaves 0 out is questioned", () => {
  const facts = coefficientFacts(reductionOf());
  expect(facts.find((fact) => fact.symbol === "e")!.meaning).toContain("The interval holds it");
  expect(facts.find((fact) => fact.symbol === "T_i")!.meaning).toContain("does not hold it");
});

test("coefficients that are not known are not listed", () => {
  const symbols = coefficientFacts(reductionOf({ powerCoefficient: null })).map((fact) => fact.symbol);
  expect(symbols).toEqual(["K_T", "e", "T_i"]);
});

test("a widened uncertainty is told, with the factor", () => {
  const fit = { ...reductionOf().thrustFit, scatterRatio: 1.8 };
  expect(scatterText(fit)).toContain("1.8 times as much");
  expect(scatterText(reductionOf().thrustFit)).toContain("agree with the line");
});

test("a result names file, hash, rows and program", () => {
  expect(provenance(reductionOf())).toBe(
    "From a.csv, SHA-256 a.csv0000000…, 12\u202f345 rows, computed by bollard-bench 0.1.0.",
  );
});

test("the plateau table has a column for what any plateau holds, and none for what no plateau holds", () => {
  const { heads, rows, summary } = plateauTable(reductionOf({ leftOut: [2] }));
  expect(heads).toEqual([
    "Rotation rate",
    "Thrust",
    "Electrical power",
    "Shaft power",
    "Thrust coefficient, ± of this plateau alone",
    "Power coefficient, ± of this plateau alone",
  ]);
  expect(rows[0]).toMatchObject({ name: "Plateau 1", lines: "101 to 180", samples: "80, worth 40", used: true });
  expect(rows[0]!.cells.slice(0, 2)).toEqual(["600 ± 6\u202frpm", "2.00 ± 0.10\u202fN"]);
  expect(rows[2]).toMatchObject({ used: false, reason: "still settling", residual: "–" });
  expect(summary).toBe("2 plateaus in the fit, 1 left out");
});

test("thrust lies on the fit line where it was made to, on both axes", () => {
  const reduction = reductionOf();
  const fitted = (axis: "thrustScale" | "rotationRateSquared") => {
    const { series } = thrustFitChart(reduction, axis);
    const [measured, fit] = ["measured", "fit"].map((kind) => series.find((one) => one.kind === kind)!.points);
    const slope = fit!.at(-1)!.y / fit!.at(-1)!.x;
    return measured!.map(({ x, y }) => y / (slope * x));
  };
  for (const axis of ["thrustScale", "rotationRateSquared"] as const) {
    for (const ratio of fitted(axis)) expect(ratio).toBeCloseTo(1, 12);
  }
});

test("plateaus left out are drawn apart, with their reason, and the limit only where power is known", () => {
  const { series } = thrustFitChart(reductionOf({ leftOut: [1], powerCoefficient: null }), "thrustScale");
  expect(series.map((one) => one.kind)).toEqual(["measured", "leftOut", "fit"]);
  expect(series[1]!.points[0]!.note).toBe("Plateau 2, lines 201 to 280, left out: still settling");
});

test("residuals are shown on an axis that holds two standard uncertainties either way", () => {
  const { y, series } = residualChart(reductionOf());
  expect([y.min, y.max]).toEqual([-4, 4]);
  expect(series.find((one) => one.kind === "measured")!.points.map((point) => point.y)).toEqual([-0.5, 0, 0.5]);
});

test("plateaus, left-out stretches and tares are marked, and a mark leads back to what it stands for", () => {
  const spans = traceSpans(reductionOf({ leftOut: [1] }));
  expect(spans.map((span) => span.kind)).toEqual(["tare", "plateau", "leftOut", "plateau"]);
  expect(spanTarget(spans[2]!.id)).toEqual({ kind: "plateau", index: 1 });
  expect(spanTarget(spans[0]!.id)).toEqual({ kind: "tare", index: 0 });
});

test("a step of the trace without a sample leaves a gap, and rotation rate is told in rpm on the second axis", () => {
  const trace = {
    start: 0,
    end: 3,
    times: [0.5, 1.5, 2.5],
    channels: [
      { role: "thrust" as const, header: "T", unit: "N", low: [1, null, 3], high: [2, null, 4] },
      { role: "rotationRate" as const, header: "n", unit: "rev/s", low: [10, 10, 10], high: [20, 20, 20] },
    ],
  };
  const whole = { start: 0, end: 30 };
  const recipe = recipeOf([["thrust", "N"]]);
  const { series } = traceChart({ trace, whole, reduction: null, recipe, hasClock: true });
  expect(series[0]!.points.map((point) => point.x)).toEqual([0.5, 2.5]);
  expect(series[1]).toMatchObject({ secondAxis: true });
  expect(series[1]!.points[0]!.yInterval).toEqual([600, 1200]);
  const rows = traceChart({ trace, whole, reduction: null, recipe, hasClock: false });
  expect(rows.x, "a zoom ends where the log does").toEqual({ label: "Row", unit: "", digits: 4, min: 0, max: 30 });
});

import { describe, expect, test } from "vitest";
import { PartsTableChoices } from "../../shared/model/partsTable.ts";
import { exportTable } from "../../shared/partsTable/exportTable.ts";
import { previewTable } from "../../shared/partsTable/previewTable.ts";
import { headOf, type TableKind, tableFields } from "../../shared/partsTable/tableFields.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";

const KINDS: readonly TableKind[] = ["propellers", "motors", "controllers", "packs", "tethers", "gears"];
const ID = "5c2b6ad0-3a8e-4f57-9d10-0f6f4f1f1a01";
/** 1 rpm/V = 2π/60 rad/(V·s); BIPM, The International System of Units, 9th ed. (2019), table 8 (minute), 2.3.4 (radian). */
const RPM_PER_VOLT = 0.10471975511965977;

type Choices = Parameters<(typeof PartsTableChoices)["parse"]>[0];
const preview = (kind: TableKind, text: string, choices: Choices = {}, stored: readonly object[] = []) =>
  previewTable(text, {
    kind,
    name: "parts.csv",
    choices: PartsTableChoices.parse(choices),
    stored: stored.map((document) => ({ id: ID, version: 1, updatedAt: "2026-01-01T00:00:00.000Z", document })),
    voltage: 14.8,
  });

describe("heads", () => {
  test.each([
    { kind: "motors", head: "Kv (rpm/V)", field: "speedConstant", unit: "rpm/V" },
    { kind: "motors", head: "kv_rpm/V", field: "speedConstant", unit: "rpm/V" },
    { kind: "motors", head: "Rm [mOhm]", field: "resistance", unit: "mΩ" },
    { kind: "motors", head: "Internal resistance / mΩ", field: "resistance", unit: "mΩ" },
    { kind: "motors", head: "I0, A", field: "noLoadCurrent", unit: "A" },
    { kind: "motors", head: "No-load current in A", field: "noLoadCurrent", unit: "A" },
    { kind: "motors", head: "noLoadCurrent A", field: "noLoadCurrent", unit: "A" },
    { kind: "motors", head: "Weight (g)", field: "mass", unit: "g" },
    { kind: "motors", head: "T max (°C)", field: "temperatureLimit", unit: "°C" },
    { kind: "packs", head: "Capacity mAh", field: "charge", unit: "mAh" },
    { kind: "packs", head: "mAh", field: "charge", unit: "mAh" },
    { kind: "packs", head: "S", field: "cells.series", unit: "" },
    { kind: "tethers", head: "Gauge", field: "conductor.size.gauge", unit: "" },
    { kind: "tethers", head: "Wet weight (N/m)", field: "weightInWater", unit: "N/m" },
    { kind: "gears", head: "Reduction", field: "ratio", unit: "" },
    { kind: "controllers", head: "Stop pulse (µs)", field: "command.stop", unit: "" },
    { kind: "propellers", head: "P/D", field: "pitchRatio", unit: "" },
    { kind: "propellers", head: "Price (EUR)", field: "price", unit: "" },
  ] as const)("$head of $kind is taken as $field in $unit, with a reason", ({ kind, head, field, unit }) => {
    const { columns } = preview(kind, `Name\t${head}\nA\t3`);
    expect(columns[1]).toMatchObject({ field, unit, open: false });
    expect(columns[1]!.reason).toMatch(/^The head .*\.$/);
  });

  test("a title above and a row of units below belong to the head", () => {
    const { columns, rows } = preview("motors", "My motors\n\nName;Kv;R;I0\n;rpm/V;mΩ;A\nA;470;85;0,6");
    expect(columns.map(({ header }) => header)).toEqual(["Name", "Kv (rpm/V)", "R (mΩ)", "I0 (A)"]);
    expect(rows).toMatchObject([{ row: 5, name: "A", act: "add", problems: [] }]);
    expect(rows[0]!.document).toMatchObject({ resistance: 0.085, noLoadCurrent: 0.6 });
  });

  test("the first column of words is the name where none is headed so", () => {
    const { columns } = preview("gears", "which\tratio\nSpur\t3");
    expect(columns[0]).toMatchObject({ field: "name", reason: expect.stringContaining("first column of words") });
  });

  test.each(KINDS)("each head that is written for %s is read as the value it was written for", (kind) => {
    const fields = tableFields(kind);
    const { columns } = preview(kind, `${fields.map(headOf).join("\t")}\n${fields.map(() => "1").join("\t")}`);
    expect(columns.map(({ field }) => field)).toEqual(fields.map(({ key }) => key));
    expect(columns.filter(({ open }) => open)).toEqual([]);
  });
});

describe("a column without unit is asked with what each reading implies, never settled silently", () => {
  const motors = (head: string, values: string) =>
    preview(
      "motors",
      `Name\t${head}\n${values
        .split(" ")
        .map((value, i) => `M${i}\t${value}`)
        .join("\n")}`,
    ).columns[1]!;

  test("K_v in rpm/V or rad/(V·s)", () => {
    const column = motors("Kv", "300 470");
    expect(column).toMatchObject({ field: "speedConstant", open: true });
    // 470 rad/(V·s) is 470 · 60/2π = 4488 rpm/V; at 12 V 53 860 rpm.
    expect(column.readings).toEqual([
      { unit: "rpm/V", implies: "300 to 470 rpm/V, 3600 to 5640 rpm without load at 12 V: usual." },
      {
        unit: "rad/(V·s)",
        implies: "2865 to 4488 rpm/V, 34377 to 53858 rpm without load at 12 V: unusual; most are 95.5 to 4011 rpm/V.",
      },
    ]);
  });
  test.each([
    { kind: "motors", head: "R", value: "85", units: ["mΩ", "Ω"], proposed: "mΩ" },
    { kind: "motors", head: "R", value: "0.085", units: ["mΩ", "Ω"], proposed: "Ω" },
    { kind: "motors", head: "Mass", value: "120", units: ["g", "kg"], proposed: "g" },
    { kind: "packs", head: "Capacity", value: "5000", units: ["mAh", "Ah", "C"], proposed: "" },
    { kind: "packs", head: "Capacity", value: "10", units: ["mAh", "Ah", "C"], proposed: "Ah" },
    { kind: "tethers", head: "Length", value: "80", units: ["m", "mm"], proposed: "m" },
    { kind: "propellers", head: "Diameter", value: "0.5", units: ["mm", "m", "in"], proposed: "m" },
    { kind: "gears", head: "Efficiency", value: "0.95", units: ["1", "%"], proposed: "1" },
  ] as const)("$head $value of $kind: $units", ({ kind, head, value, units, proposed }) => {
    const { columns, open } = preview(kind, `Name\t${head}\nA\t${value}`);
    expect(columns[1]!.readings.map(({ unit }) => unit)).toEqual(units);
    expect(columns[1]).toMatchObject({ unit: proposed, open: true });
    expect(open[0]).toBe(`The unit of "${head}": ${units.join(" or ")}?`);
  });
  test("a unit that only one reading allows is told, not asked", () => {
    const { columns } = preview("propellers", "Name\tDiameter\nA\t76");
    expect(columns[1]).toMatchObject({
      unit: "mm",
      open: false,
      reason: expect.stringContaining("only one that fits"),
    });
  });
  test("a unit that is none of the quantity is named and asked", () => {
    expect(motors("Kv (furlong)", "470")).toMatchObject({
      open: true,
      reason: expect.stringContaining('"furlong" is no unit'),
    });
  });
  test("cells with units of their own ask nothing", () => {
    const { columns, rows } = preview("motors", "Name\tKv\tR\tI0\nA\t470 rpm/V\t85 mohm\t600 mA");
    expect(columns.filter(({ open }) => open)).toEqual([]);
    expect(rows[0]!.document).toMatchObject({ resistance: 0.085, noLoadCurrent: 0.6 });
    expect(rows[0]!.document!["speedConstant"]).toBeCloseTo(470 * RPM_PER_VOLT, 10);
  });
  test("an answer settles it", () => {
    const text = "Name\tKv\tR (mΩ)\tI0 (A)\nA\t470\t85\t0.6";
    const answered = { columns: [{ column: 1, field: "speedConstant", unit: "rpm/V" }] };
    expect(preview("motors", text).open).toHaveLength(1);
    const { open, rows } = preview("motors", text, answered);
    expect(open).toEqual([]);
    expect(rows[0]!.document!["speedConstant"]).toBeCloseTo(470 * RPM_PER_VOLT, 10);
  });
});

describe("what is wrong in a row is told by line and column", () => {
  const HEAD = "Name\tKv (rpm/V)\tR (mΩ)\tI0 (A)\tPole pairs";
  test.each([
    { row: "A\tmany\t85\t0.6\t7", code: "quantity.not-a-number", where: 'column "Kv (rpm/V)"', says: '"many"' },
    { row: "A\t470\t85\t0.6\t6.5", code: "parts.not-allowed", where: 'column "Pole pairs"', says: "a whole number" },
    { row: "A\t-470\t85\t0.6\t7", code: "parts.not-allowed", where: 'column "Kv (rpm/V)"', says: "more than 0" },
    { row: "A\t470\t85 kg\t0.6\t7", code: "quantity.wrong-dimension", where: 'column "R (mΩ)"', says: "a mass" },
    { row: "A\t470\t1,250\t0.6\t7", code: "parts.either-number", where: 'column "R (mΩ)"', says: "1250 or 1.250" },
    { row: "\t470\t85\t0.6\t7", code: "parts.missing", where: "line 2", says: "no name" },
    { row: "A\t470\t\t0.6\t7", code: "parts.missing", where: "line 2", says: "no winding resistance" },
    { row: "A\t470\t85\t0.6\t7\tmore", code: "parts.more-cells", where: "line 2", says: "6 cells under 5 heads" },
  ])("$row: $code", ({ row, code, where, says }) => {
    const { rows, open } = preview("motors", `${HEAD}\n${row}`);
    expect(rows[0]!.problems.map((one) => one.code)).toEqual([code]);
    expect(rows[0]!.problems[0]).toMatchObject({
      where: expect.stringContaining(where),
      message: expect.stringContaining(says),
    });
    expect(rows[0]!.document).toBeNull();
    expect(open).toContain("One row can not be read: mend it, or leave it out.");
  });

  test("the others are imported when a person leaves it out", () => {
    const text = `${HEAD}\nA\t470\t85\t0.6\t7\nB\tmany\t85\t0.6\t7`;
    expect(preview("motors", text, { problems: "leaveOut" }).open).toEqual([]);
  });

  test("some values of a group ask for the rest", () => {
    const { rows } = preview("packs", "Name\tU (V)\tR (mΩ)\tparallel\nA\t14.8\t30\t2");
    expect(rows[0]!.problems).toMatchObject([
      { code: "parts.not-whole", message: expect.stringContaining("cells in series") },
    ]);
  });

  test.each([
    { text: "470\t85\t0.6", code: "parts.no-head" },
    { text: "Name\tKv", code: "parts.no-rows" },
    { text: "\n\n", code: "parts.no-rows" },
    { text: `Name\tKv\n${"A\t1\n".repeat(5001)}`, code: "parts.too-long" },
  ])("no table of parts at all: $code", ({ text, code }) => {
    expect(() => preview("motors", text)).toThrow(InputProblem);
    expect(() => preview("motors", text)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code }) }),
    );
  });
});

describe("a name that is taken", () => {
  const STORED = { name: "Spur", ratio: 3, efficiency: 0.95, price: 12, note: "" };
  test("is asked, and nothing is imported before", () => {
    const { rows, open } = preview("gears", "name,ratio,price\n spur ,3,14", {}, [STORED]);
    expect(rows[0]).toMatchObject({ act: "ask", storedId: ID, changes: ["name", "price"] });
    expect(open).toEqual(["One row has a name that is taken: change the part, add another, or leave it out?"]);
  });
  test("an update keeps what the table does not say", () => {
    const { rows, open } = preview("gears", "name,price\nSpur,14", { sameName: "update" }, [STORED]);
    expect(open).toEqual([]);
    expect(rows[0]).toMatchObject({ act: "update", changes: ["price"], document: { ...STORED, price: 14 } });
  });
  test("the same part again is nothing to do", () => {
    const { rows, told, open } = preview("gears", exportTable("gears", [STORED]), {}, [STORED]);
    expect(rows[0]).toMatchObject({ act: "skip", changes: [] });
    expect(told).toContain("One row is as the stored part: nothing to do there.");
    expect(open).toEqual([]);
  });
  test("two rows can not change one part", () => {
    const text = "name,price\nSpur,14\nSpur,15";
    const { rows } = preview("gears", text, { sameName: "update" }, [STORED]);
    expect(rows.map(({ problems }) => problems.map(({ code }) => code))).toEqual([[], ["parts.no-single-part"]]);
  });
  test("another way of saying the copper takes the place of the first", () => {
    const stored = {
      name: "T",
      diameter: 0.006,
      conductor: { length: 80, size: { given: "gauge", gauge: 20 }, pairs: 1 },
      note: "",
    };
    const { rows } = preview("tethers", "name,copper section (mm²)\nT,0.5", { sameName: "update" }, [stored]);
    expect(rows[0]!.document).toMatchObject({ conductor: { length: 80, size: { given: "area", area: 5e-7 } } });
    expect(rows[0]!.document).not.toHaveProperty("conductor.size.gauge");
  });
  test("a new constant ends correlations that were found with the old one", () => {
    const correlations = [{ of: "speedConstant", and: "resistance", coefficient: 0.5 }];
    const stored = {
      name: "A",
      speedConstant: 47,
      resistance: 0.1,
      noLoadCurrent: 0.5,
      noLoadCurrentSlope: 0,
      uncertainties: { correlations },
      note: "",
    };
    const kept = preview("motors", "name,price\nA,20", { sameName: "update" }, [stored]).rows[0]!.document;
    expect(kept).toMatchObject({ uncertainties: { correlations } });
    const dropped = preview("motors", "name,R (Ω)\nA,0.2", { sameName: "update" }, [stored]).rows[0]!.document;
    expect(dropped).not.toHaveProperty("uncertainties.correlations");
  });
});

describe("columns that hold nothing of the part", () => {
  const TEXT = "name,ratio,efficiency (%),Shelf\nSpur,3,95,B4";
  test("are listed as left out", () => {
    expect(preview("gears", TEXT)).toMatchObject({ leftOut: ["Shelf"], open: [] });
  });
  test("go into the note where a person says so", () => {
    const { leftOut, rows } = preview("gears", TEXT, { others: "note" });
    expect(leftOut).toEqual([]);
    expect(rows[0]!.document).toMatchObject({ note: "Shelf: B4", efficiency: expect.closeTo(0.95, 12) });
  });
});

describe("implausible motors are asked before they are taken", () => {
  const TEXT = "name,Kv (rad/(V·s)),R (mΩ),I0 (A)\nA,470,85,0.6";
  test("with what the speed constant may have been", () => {
    const { rows, open } = preview("motors", TEXT);
    expect(rows[0]).toMatchObject({ open: true, doubts: [{ code: "motor.speed-constant-unit" }] });
    expect(rows[0]!.readings[0]!.says).toBe("it is 470 rpm/V: the number was in rpm/V and was read in rad/(V·s)");
    expect(open).toEqual(["One row has values that look implausible: are they right?"]);
  });
  test("the other reading settles it", () => {
    const { readings } = preview("motors", TEXT).rows[0]!;
    const { rows, open } = preview("motors", TEXT, { rows: [{ row: 2, speedConstant: readings[0]!.speedConstant }] });
    expect(open).toEqual([]);
    expect(rows[0]!.document!["speedConstant"]).toBeCloseTo(470 * RPM_PER_VOLT, 10);
  });
  test("so does keeping it", () => {
    expect(preview("motors", TEXT, { rows: [{ row: 2, keep: true }] })).toMatchObject({
      open: [],
      rows: [{ open: false }],
    });
  });
  test.each([
    { row: "A,47,0,0.6", code: "motor.zero-resistance" },
    { row: "A,47,850 Ω,0.6", code: "motor.no-load-above-stall" },
  ])("$row: $code", ({ row, code }) => {
    const { rows } = preview("motors", `name,Kv (rad/(V·s)),R (mΩ),I0 (A)\n${row}`);
    expect(rows[0]).toMatchObject({ open: true, doubts: [{ code }], readings: [] });
  });
});

describe("what is written for a spreadsheet", () => {
  test("has units in its heads and numbers as a builder writes them", () => {
    const motor = {
      name: "A",
      speedConstant: 455 * RPM_PER_VOLT,
      resistance: 0.12,
      noLoadCurrent: 0.55,
      mass: 0.31,
      temperatureLimit: 393.15,
      note: "",
    };
    expect(exportTable("motors", [motor])).toBe(
      "\uFEFFname,speed constant (rpm/V),winding resistance (mΩ),no-load current (A),greatest winding temperature (°C),mass (g),note\r\nA,455,120,0.55,120,310,\r\n",
    );
  });
  test("runs no formula", () => {
    const text = exportTable("gears", [{ name: '=HYPERLINK("http://x")', ratio: 3, efficiency: 1, note: "+1\n-2" }]);
    expect(text).toContain(`"'=HYPERLINK(""http://x"")"`);
    expect(text).toContain(`"'+1\n-2"`);
  });
});

import { expect, test } from "vitest";
import type { LogInspection } from "../../shared/model/log.ts";
import type { ColumnUse } from "../../shared/model/recipe.ts";
import { columnsModel, unitForRole, unitsOfRole, withColumn } from "../../web/views/bench/columnsModel.ts";

const INSPECTION: LogInspection = {
  shape: {
    encoding: "utf-8",
    delimiter: ",",
    decimalMark: ".",
    headerLine: 1,
    unitsLine: null,
    firstDataLine: 2,
    commentMark: null,
    columns: [
      { header: "t", name: "t", unit: null },
      { header: "speed", name: "speed", unit: null },
      { header: "", name: "", unit: null },
    ],
  },
  guesses: [
    { column: 0, role: "time", unit: "s", reason: "It grows steadily.", sure: true, alternatives: [] },
    {
      column: 1,
      role: "rotationRate",
      unit: "erpm",
      reason: "It reaches 21 000.",
      sure: false,
      alternatives: [{ role: "rotationRate", unit: "rpm", implies: "the shaft turns 350 times a second" }],
    },
    { column: 2, role: "thrust", unit: "gf", reason: "It is zero at rest.", sure: true, alternatives: [] },
  ],
  preview: [
    ["0", "21000", "812"],
    ["0.1", "", "815"],
  ],
  rows: 12000,
  repairs: [{ code: "log.missing-cells", count: 12, firstLine: 41, message: "12 cells missing, first at line 41." }],
  warnings: [],
};
const USES: ColumnUse[] = INSPECTION.guesses.map(({ column, role, unit }) => ({ column, role, unit }));

test("a column shows its header, its first values, and why it was read as it was", () => {
  const [, speed, third] = columnsModel(INSPECTION, USES).rows;
  expect(speed).toMatchObject({ header: "speed", firstValues: "21000  –", reason: "It reaches 21 000.", sure: false });
  expect(speed!.alternatives[0]!.text).toBe("Rotation rate in rpm: the shaft turns 350 times a second");
  expect(third!.header).toBe("Column 3");
});

test("a doubtful column is named in the lead", () => {
  const model = columnsModel(INSPECTION, USES);
  expect(model.lead).toBe("12\u202f000 rows of 3 columns. Look at “speed”: more than one reading is plausible.");
});

test("electrical turns ask for the pole pairs, turns of the shaft do not", () => {
  expect(columnsModel(INSPECTION, USES).needsPolePairs).toBe(true);
  const shaft = withColumn(USES, { column: 1, role: "rotationRate", unit: "rpm" });
  expect(columnsModel(INSPECTION, shaft).needsPolePairs).toBe(false);
});

test("a reading that a person chose is no longer doubtful", () => {
  const chosen = withColumn(USES, { column: 1, role: "rotationRate", unit: "rpm" });
  expect(columnsModel(INSPECTION, chosen).rows[1]).toMatchObject({ reason: "Set by you.", sure: true });
});

test("a role belongs to one column: the former holder is set aside", () => {
  const changed = withColumn(USES, { column: 0, role: "thrust", unit: "gf" });
  expect(changed.map((use) => use.role)).toEqual(["thrust", "rotationRate", "ignore"]);
});

test("what is missing before a log can be reduced is said, each with what to do", () => {
  const without = USES.filter((use) => use.role !== "thrust");
  expect(columnsModel(INSPECTION, without).missing).toEqual([
    "No column stands for thrust. Choose it in the list above.",
  ]);
});

test.each([
  { role: "thrust", former: "gf", unit: "gf" },
  { role: "voltage", former: "gf", unit: "V" },
  { role: "command", former: "%", unit: "%" },
  { role: "command", former: "gf", unit: "us" },
] as const)("a column in $former that becomes $role gets $unit", ({ role, former, unit }) => {
  expect(unitForRole(role, former)).toBe(unit);
});

test("a load cell in grams can stay in grams", () => {
  expect(unitsOfRole("thrust")).toContain("g");
});

test("another spelling of the same unit does not count as a decision", () => {
  const guess = {
    column: 0,
    role: "command" as const,
    unit: "us",
    reason: "It stays between 1000 and 2000.",
    sure: true,
    alternatives: [],
  };
  const inspection = { ...INSPECTION, guesses: [guess] };
  const [row] = columnsModel(inspection, [{ column: 0, role: "command", unit: "µs" }]).rows;
  expect(row).toMatchObject({ unit: "us", reason: guess.reason });
});

import { describe, expect, test } from "vitest";
import type { PartsTablePreview } from "../../shared/model/partsTable.ts";
import {
  importLabel,
  NO_CHOICES,
  needsALook,
  outcomeText,
  shownRows,
  tableLook,
  unitOptions,
  withColumn,
  withProposals,
  withRow,
} from "../../web/views/parts/table/tableModel.ts";

const USE = { kind: "motors", name: "motors.csv", choices: NO_CHOICES, stored: [] } as const;
const TABLE = "name,Kv,R,I0 (A)\nA,470,85,0.6\nB,many,85,0.6";

function previewOf(text: string, choices = NO_CHOICES): PartsTablePreview {
  const look = tableLook(text, { ...USE, choices });
  if (look.state !== "table") throw new Error(`no table: ${look.state}`);
  return look.preview;
}

describe("the dialog for a table of parts", () => {
  test("waits for a text, and says why one is no table", () => {
    expect(tableLook(" ", USE)).toEqual({ state: "empty" });
    expect(tableLook("1,2", USE)).toMatchObject({ state: "refused", why: expect.stringContaining("a row of heads") });
  });
  test("takes all proposed units at once, and only those that are open", () => {
    const choices = withProposals(NO_CHOICES, previewOf(TABLE));
    expect(choices.columns).toEqual([
      { column: 1, field: "speedConstant", unit: "rpm/V" },
      { column: 2, field: "resistance", unit: "mΩ" },
    ]);
    expect(previewOf(TABLE, choices).columns.filter(({ open }) => open)).toEqual([]);
  });
  test("forgets the unit of a column that stands for something else now", () => {
    const choices = withColumn(withColumn(NO_CHOICES, 1, "resistance", "Ω"), 1, "speedConstant", "rpm/V");
    expect(choices.columns).toEqual([{ column: 1, field: "speedConstant", unit: "rpm/V" }]);
    expect(unitOptions("motors", "speedConstant")).toContain("rpm/V");
    expect(unitOptions("motors", "polePairs")).toEqual([]);
  });
  test("keeps what was decided about a row when more is decided", () => {
    expect(withRow(withRow(NO_CHOICES, 3, { act: "add" }), 3, { keep: true }).rows).toEqual([
      { row: 3, act: "add", keep: true },
    ]);
  });
  test("says what the import does", () => {
    const choices = { ...withProposals(NO_CHOICES, previewOf(TABLE)), problems: "leaveOut" as const };
    const preview = previewOf(TABLE, choices);
    expect(outcomeText("motors", preview)).toBe("Adds 1 motor and leaves out 1 row.");
    expect(importLabel("motors", preview)).toBe("Imported 1 motor");
  });
  test("shows rows that need a look before the others, in the order of the table", () => {
    const rows = previewOf(`${TABLE}\nC,480,80,0.5\nD,x,80,0.5`).rows;
    expect(rows.map(needsALook)).toEqual([false, true, false, true]);
    expect(shownRows(rows, 3).map(({ row }) => row)).toEqual([2, 3, 5]);
  });
});

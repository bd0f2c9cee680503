import { expect, test } from "vitest";
import {
  EMPTY_TABLE,
  isBlock,
  type TypedTable,
  tableGap,
  tableText,
  withCell,
  withColumnAdded,
  withPasted,
  withRowAdded,
} from "../../web/views/bench/tableModel.ts";

const SMALL: TypedTable = {
  heads: ["rpm", "thrust (gf)"],
  rows: [
    ["", ""],
    ["", ""],
  ],
};

test("a block pasted with words on its first line replaces the heads and grows the table", () => {
  const pasted = withPasted(
    SMALL,
    0,
    0,
    "speed (rpm)\tload (N)\tU (V)\r\n900\t1,5\t12\r\n1200\t2,7\t12\r\n1500\t4,1\t11,9\r\n",
  );
  expect(pasted.heads).toEqual(["speed (rpm)", "load (N)", "U (V)"]);
  expect(pasted.rows).toEqual([
    ["900", "1,5", "12"],
    ["1200", "2,7", "12"],
    ["1500", "4,1", "11,9"],
  ]);
});

test("a block of numbers keeps the heads and lies where it was pasted", () => {
  const pasted = withPasted(SMALL, 1, 1, "150\n210");
  expect(pasted.heads).toEqual(SMALL.heads);
  expect(pasted.rows).toEqual([
    ["", ""],
    ["", "150"],
    ["", "210"],
  ]);
});

test("a block pasted into the head row fills heads and rows", () => {
  const pasted = withPasted(SMALL, -1, 0, "n (rpm)\tT (gf)\n900\t150");
  expect(pasted.heads).toEqual(["n (rpm)", "T (gf)"]);
  expect(pasted.rows[0]).toEqual(["900", "150"]);
});

test.each([
  { text: "900\t150", block: true },
  { text: "900\n1200", block: true },
  { text: " 900 ", block: false },
  { text: "900\n", block: false },
])("$text is a block of cells: $block", ({ text, block }) => {
  expect(isBlock(text)).toBe(block);
});

test("the text of a table leaves empty rows and columns away and keeps cells as they were written", () => {
  const table: TypedTable = {
    heads: ["rpm", "thrust (gf)", "voltage (V)"],
    rows: [
      ["900", "150,5", ""],
      ["", "", ""],
      ["1200", " 270 ", ""],
    ],
  };
  expect(tableText(table)).toBe("rpm\tthrust (gf)\n900\t150,5\n1200\t270\n");
});

test("a table says what it still needs", () => {
  expect(tableGap(EMPTY_TABLE)).toContain("three rows");
  const rows = [
    ["1", "2"],
    ["3", "4"],
    ["5", "6"],
  ];
  expect(tableGap({ heads: ["rpm", ""], rows })).toBe("Name column 2, with its unit.");
  expect(tableGap({ heads: ["rpm", "N"], rows })).toBe("");
});

test("rows and columns are added without touching what is there", () => {
  const filled = withCell(SMALL, 0, 0, "900");
  expect(withRowAdded(filled).rows).toEqual([
    ["900", ""],
    ["", ""],
    ["", ""],
  ]);
  expect(withColumnAdded(filled).rows[0]).toEqual(["900", "", ""]);
});

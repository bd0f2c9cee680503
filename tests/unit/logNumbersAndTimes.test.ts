import { expect, test } from "vitest";
import { MISSING, read, rowsOf } from "./logText.ts";

test("a decimal comma file takes a lone point for no number, since it could be either mark", () => {
  expect(rowsOf("a;b\n0,5;1\n1,5;1.234\n")[1]).toEqual([1.5, MISSING]);
});

test.each([
  { why: "a line all in the other mark", text: "a;b\n0.5;1.25\n1.5;2.5\n2,5;9,246\n", row: [2.5, 9.246] },
  { why: "thousands stay what they are", text: "a;b\n0.5;1000\n1.5;2000\n2.5;1,234,567\n", row: [2.5, 1234567] },
  { why: "one slip in a line", text: "a;b\n0.5;1.25\n1.5;2.5\n2.5;3,5\n", row: [2.5, 3.5] },
  { why: "what may be thousands", text: "a;b\n0.5;1.25\n1.5;2.5\n2.5;3,500\n", row: [2.5, MISSING] },
])("decimal points, then $why", ({ text, row }) => {
  expect(rowsOf(text).at(-1)).toEqual(row);
});

test("most lines decide on the decimal mark, whichever comes first", () => {
  const { shape, repairs } = read("a;b\n0.5;1.25\n1,5;2,25\n2,5;3,25\n");
  expect(shape).toMatchObject({ decimalMark: ",", headerLine: 1 });
  expect(repairs.map(({ code, count }) => [code, count])).toEqual([["log.other-decimals", 1]]);
});

test.each([
  { why: "ISO 8601", cells: ["2026-01-05T23:59:59.5Z", "2026-01-06T00:00:00.25Z"], seconds: [0, 0.75] },
  { why: "ISO 8601 with offsets", cells: ["2026-01-05T10:00:00+01:00", "2026-01-05T09:00:01Z"], seconds: [0, 1] },
  { why: "a time of day", cells: ["10:00:00.100", "10:00:00.200"], seconds: [0, 0.1] },
  { why: "a time of day past midnight", cells: ["23:59:59", "00:00:01"], seconds: [0, 2] },
  { why: "minutes", cells: ["59:58.5", "59:59.75"], seconds: [0, 1.25] },
  { why: "noon in twelve hours", cells: ["05/01/2026 11:59:59 AM", "05/01/2026 12:00:01 PM"], seconds: [0, 2] },
])("$why becomes seconds since the first row", ({ cells, seconds }) => {
  const { columns, shape, repairs } = read(`when,b\n${cells[0]},1\n${cells[1]},2\n`);
  expect([...columns[0]!]).toEqual(seconds);
  expect(shape.columns[0]!.unit).toBe("s");
  expect(repairs.map(({ code }) => code)).toEqual(["log.clock"]);
});

test("the arrival times that a serial terminal sets before each line become a time column", () => {
  const table = read("10:00:00.100 -> thrust (N),rpm\n10:00:00.200 -> 1.5,900\n10:00:00.300 -> 1.6,910\n");
  expect(table.columns.map((column) => [...column])).toEqual([
    [0, 0.1],
    [1.5, 1.6],
    [900, 910],
  ]);
  expect(table.shape.columns.map(({ name, unit }) => `${name} ${unit}`)).toEqual([" s", "thrust N", "rpm rpm"]);
});

test.each([
  { why: "Swiss thousands", cell: "1'234", value: 1234 },
  { why: "a narrow blank between thousands", cell: "12\u202f345.5", value: 12345.5 },
  { why: "a sign apart", cell: "- 12.5", value: -12.5 },
  { why: "a formula that is a text", cell: '="12.5"', value: 12.5 },
  { why: "a hexadecimal counter is no number", cell: "0x1F", value: MISSING },
  { why: "an accounting bracket may be a flag", cell: "(12.0)", value: MISSING },
])("$cell is read as $value ($why)", ({ cell, value }) => {
  expect(rowsOf(`a;b;c\n1;2;3\n${cell};2;3\n4;2;3\n`)[1]![0]).toBe(value);
});

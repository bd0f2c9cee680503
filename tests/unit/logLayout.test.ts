import { expect, test } from "vitest";
import { looksLikeJson } from "../../shared/log/jsonRows.ts";
import { MISSING, read, rowsOf } from "./logText.ts";

test.each([
  { why: "commas", text: "a,b\n0.5,1\n1.5,2\n", delimiter: ",", decimalMark: "." },
  { why: "semicolons", text: "a;b\n0.5;1\n1.5;2\n", delimiter: ";", decimalMark: "." },
  { why: "semicolons and a decimal comma", text: "a;b\n0,5;1\n1,5;2\n", delimiter: ";", decimalMark: "," },
  { why: "tabs", text: "a\tb\n0.5\t1\n1.5\t2\n", delimiter: "\t", decimalMark: "." },
  { why: "tabs and a decimal comma", text: "a\tb\n0,5\t1\n1,5\t2\n", delimiter: "\t", decimalMark: "," },
  { why: "bars", text: "a|b\n0.5|1\n1.5|2\n", delimiter: "|", decimalMark: "." },
  { why: "a drawn table", text: "| a | b |\n|---|--:|\n| 0.5 | 1 |\n| 1.5 | 2 |\n", delimiter: "|", decimalMark: "." },
  { why: "runs of blanks", text: "  a     b\n0.5     1\n1.5     2\n", delimiter: " ", decimalMark: "." },
  { why: "blanks and a decimal comma", text: "a b\n0,5 1\n1,5 2\n", delimiter: " ", decimalMark: "," },
  { why: "commas with blanks after them", text: "a, b\n0.5, 1\n1.5, 2\n", delimiter: ",", decimalMark: "." },
  { why: "quoted decimal commas between commas", text: 'a,b\n"0,5",1\n"1,5",2\n', delimiter: ",", decimalMark: "," },
  { why: "line feeds and carriage returns mixed", text: "a,b\r\n0.5,1\r1.5,2\n", delimiter: ",", decimalMark: "." },
  { why: "no line end at the end", text: "a,b\n0.5,1\n1.5,2", delimiter: ",", decimalMark: "." },
  { why: "no header", text: "0.5,1\n1.5,2\n", delimiter: ",", decimalMark: "." },
])("$why: the same two rows are read", ({ text, delimiter, decimalMark }) => {
  expect(read(text).shape).toMatchObject({ delimiter, decimalMark });
  expect(rowsOf(text)).toEqual([
    [0.5, 1],
    [1.5, 2],
  ]);
});

test.each([
  { header: "Thrust [gf]", name: "Thrust", unit: "gf" },
  { header: "T / N", name: "T", unit: "N" },
  { header: '"Current, A"', name: "Current", unit: "A" },
  { header: "Schub in N", name: "Schub", unit: "N" },
  { header: "thrust_g", name: "thrust", unit: "g" },
  { header: "timeMs", name: "time", unit: "Ms" },
  { header: "rpm", name: "rpm", unit: "rpm" },
  { header: "Drehzahl 1/min", name: "Drehzahl", unit: "1/min" },
  { header: "Torque (N.m)", name: "Torque", unit: "N·m" },
  { header: "Load cell (left)", name: "Load cell (left)", unit: null },
  { header: "v_in", name: "v_in", unit: null },
  { header: "rpm_min", name: "rpm_min", unit: null },
  { header: "n", name: "n", unit: null },
])("header $header is $name in $unit", ({ header, name, unit }) => {
  expect(read(`x,${header}\n1,2\n2,3\n`).shape.columns[1]).toMatchObject({ name, unit });
});

test.each([
  {
    why: "a row of units below the header",
    text: "time,thrust\ns,N\n1,2\n2,3\n",
    lines: { headerLine: 1, unitsLine: 2, firstDataLine: 3 },
    units: ["s", "N"],
  },
  {
    why: "header and units behind comment marks",
    text: "# stand 2\n# time, thrust\n# s, N\n1,2\n2,3\n",
    lines: { headerLine: 2, unitsLine: 3, firstDataLine: 4, commentMark: "#" },
    units: ["s", "N"],
  },
  {
    why: "a preamble of other shapes",
    text: "Date; 3 May\nDiameter, 76 mm\n\ntime (s),thrust (N)\n1,2\n2,3\n",
    lines: { headerLine: 4, unitsLine: null, firstDataLine: 5 },
    units: ["s", "N"],
  },
  {
    why: "header cells with line breaks in quotes",
    text: '"time\n(s)","thrust\n(N)"\n1,2\n2,3\n',
    lines: { headerLine: 1, unitsLine: null, firstDataLine: 4 },
    units: ["s", "N"],
  },
  {
    why: "blanks inside aligned names",
    text: "time (s)   thrust (N)\n1          2\n2          3\n",
    lines: { headerLine: 1, unitsLine: null, firstDataLine: 2 },
    units: ["s", "N"],
  },
  {
    why: "a comment that is a sentence with a comma",
    text: "# first run, on Monday\n1,2\n2,3\n",
    lines: { headerLine: null, unitsLine: null, firstDataLine: 2 },
    units: [null, null],
  },
  {
    why: "units written in the cells",
    text: "time,thrust\n1 s,2 N\n2 s,3 N\n",
    lines: { headerLine: 1, unitsLine: null, firstDataLine: 2 },
    units: ["s", "N"],
  },
  {
    why: "names written in the cells",
    text: "time:1,thrust:2\ntime:2,thrust:3\n",
    lines: { headerLine: null, unitsLine: null, firstDataLine: 1 },
    units: [null, null],
  },
])("$why: header, units and rows are found", ({ text, lines, units }) => {
  const { shape } = read(text);
  expect(shape).toMatchObject(lines);
  expect(shape.columns.map(({ unit }) => unit)).toEqual(units);
  expect(rowsOf(text)).toEqual([
    [1, 2],
    [2, 3],
  ]);
});

test("names written in the cells become the names of the columns", () => {
  expect(read("time:1,thrust:2\ntime:2,thrust:3\n").shape.columns.map(({ name }) => name)).toEqual(["time", "thrust"]);
});

test("two header rows become one name a column", () => {
  const { shape, repairs } = read("Load cell,,ESC,\nthrust,torque,current,rpm\n1,2,3,4\n2,3,4,5\n");
  expect(shape.columns.map(({ header }) => header)).toEqual([
    "Load cell thrust",
    "Load cell torque",
    "ESC current",
    "ESC rpm",
  ]);
  expect(repairs.map(({ code }) => code)).toEqual(["log.header-rows"]);
});

test.each([
  {
    text: "[[0, 1],\n [1, 2]]",
    rows: [
      [0, 1],
      [1, 2],
    ],
  },
  {
    text: '[\n{"a": 0, "b": null},\n{"b": 2, "a": 1, "c": 3}\n]',
    rows: [
      [0, MISSING, MISSING],
      [1, 2, 3],
    ],
  },
  {
    text: '{"x": {"y": [{"a": 1, "b": [2, 3]}, {"a": 4, "b": [5, 6]}]}, "z": [1, 2]}',
    rows: [
      [1, 2, 3],
      [4, 5, 6],
    ],
  },
])("one JSON text is read by its records: $text", ({ text, rows }) => {
  expect(rowsOf(text)).toEqual(rows);
  expect(read(text).repairs[0]).toMatchObject({ code: "log.json", count: 2 });
});

test("a whole object on each line is not one JSON text", () => {
  const objects = '{"a": 0.5, "b": 1}\n{"a": 1.5, "b": 2}\n';
  expect(looksLikeJson(objects)).toBe(false);
  expect(read(objects).repairs.map(({ code }) => code)).not.toContain("log.json");
});

test("a header with one name too few is counted from the left and says so", () => {
  const { shape, repairs } = read("time,thrust,rpm\n1,2,3,4\n2,3,4,5\n");
  expect(shape.columns.map(({ header }) => header)).toEqual(["time", "thrust", "rpm", ""]);
  expect(repairs.map(({ code }) => code)).toEqual(["log.header-short"]);
});

test("a table pasted from a spreadsheet is read like any log", () => {
  const table = read("Throttle\tForce (gf)\tCurrent (A)\n1100\t12\t0,4\n1200\t55\t1,2\n1300\t120\t3\n");
  expect(table.columns.map((column) => [...column])).toEqual([
    [1100, 1200, 1300],
    [12, 55, 120],
    [0.4, 1.2, 3],
  ]);
});

test("a degree sign from a Spanish keyboard and a full stop between units are understood", () => {
  const { shape } = read("temp (ºC),torque (N.mm)\n1,2\n2,3\n");
  expect(shape.columns.map(({ unit }) => unit)).toEqual(["°C", "N·mm"]);
});

test("units that stand above the numbers they belong to may leave a column out", () => {
  const { shape } = read(
    "   RPM    Thrust    Current\n          (N)       (A)\n  1000    1.2       0.9\n  1500    2.7       2.1\n",
  );
  expect(shape).toMatchObject({ headerLine: 1, unitsLine: 2, firstDataLine: 3 });
  expect(shape.columns.map(({ name, unit }) => `${name} ${unit}`)).toEqual(["RPM RPM", "Thrust N", "Current A"]);
});

test("names with a colon and a blank before each number are names", () => {
  const table = read("time: 0.1 thrust: 2.5\ntime: 0.2 thrust: 2.6\n");
  expect(table.shape.columns.map(({ name }) => name)).toEqual(["time", "thrust"]);
  expect([...table.columns[1]!]).toEqual([2.5, 2.6]);
});

test("unit words of a stand that speaks no words of the trade are no names", () => {
  const text = Array.from({ length: 5 }, (_, i) => `stand1 ${i}.5 kiel ${i}.1 N ${i}`).join("\n");
  expect(read(text).shape.columns.map(({ header, unit }) => header + unit)).toEqual([
    "null",
    "null",
    "null",
    "N",
    "null",
    "null",
  ]);
});

import { expect, test } from "vitest";
import { looksLikeJson } from "../../shared/log/jsonRows.ts";
import { readLog } from "../../shared/log/readLog.ts";

const read = (text: string) => readLog(new TextEncoder().encode(text), "stand.csv");
const rowsOf = (text: string) => {
  const table = read(text);
  return Array.from({ length: table.rows }, (_, row) => table.columns.map((column) => column[row]!));
};
const codesOf = (text: string) =>
  read(text).repairs.map(({ code, count, firstLine }) => `${code} ${count} ${firstLine}`);
const MISSING = Number.NaN;

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
    why: "an empty cell",
    text: "a,b\n1,2\n2,\n",
    rows: [
      [1, 2],
      [2, MISSING],
    ],
    codes: ["log.empty-cell 1 3"],
  },
  {
    why: "words for no number",
    text: "a,b,c\n1,2,3\n2,ovf,nan\n3,--,4\n4,-inf,N/A\n5,6,7\n",
    rows: [
      [1, 2, 3],
      [2, MISSING, MISSING],
      [3, MISSING, 4],
      [4, MISSING, MISSING],
      [5, 6, 7],
    ],
    codes: ["log.missing-cell 3 3", "log.missing-cell 2 3"],
  },
  {
    why: "text among numbers",
    text: "a,b,c\n1,2,3\n2,jam!,4\n",
    rows: [
      [1, 2, 3],
      [2, MISSING, 4],
    ],
    codes: ["log.text-cell 1 3"],
  },
  {
    why: "a delimiter at the end of each line",
    text: "a,b,\n1,2,\n2,3,\n",
    rows: [
      [1, 2],
      [2, 3],
    ],
    codes: ["log.trailing-delimiter 2 2"],
  },
  {
    why: "a short and a long row",
    text: "a,b,c\n1,2,3\n2,3\n3,4,5,6\n",
    rows: [
      [1, 2, 3],
      [2, 3, MISSING],
      [3, 4, 5],
    ],
    codes: ["log.short-row 1 3", "log.long-row 1 4"],
  },
  {
    why: "a last line cut in the middle of a number",
    text: "a,b,c\n1,2,3\n2,3,4\n3,45",
    rows: [
      [1, 2, 3],
      [2, 3, 4],
      [3, MISSING, MISSING],
    ],
    codes: ["log.short-row 1 4", "log.cut-line 1 4"],
  },
  {
    why: "comments and closing words",
    text: "a,b\n1,2\n# changed the propeller\n2,3\nend of test\nTotal,3\n",
    rows: [
      [1, 2],
      [2, 3],
    ],
    codes: ["log.comment 1 3", "log.text-line 2 5"],
  },
  {
    why: "a quote that is never closed",
    text: 'a,b\n1,2\n"2,3\n3,4\n',
    rows: [
      [1, 2],
      [2, 3],
      [3, 4],
    ],
    codes: ["log.open-quote 1 3"],
  },
  {
    why: "a thousands mark in quotes",
    text: 'a,b\n1,"1,234.5"\n2,2.5\n',
    rows: [
      [1, 1234.5],
      [2, 2.5],
    ],
    codes: ["log.thousands 1 2"],
  },
  {
    why: "a column of words",
    text: "a,state,b\n1,idle,2\n2,run,3\n",
    rows: [
      [1, MISSING, 2],
      [2, MISSING, 3],
    ],
    codes: ["log.text-column 1 2"],
  },
  {
    why: "memory that was never written",
    text: "a,b\n1,2\n2,3\n\0\0\0\0",
    rows: [
      [1, 2],
      [2, 3],
    ],
    codes: ["log.padding 4 4"],
  },
  {
    why: "a damaged first row",
    text: "a,b,c\n1,2,x9\n2,3,4\n3,4,5\n",
    rows: [
      [1, 2, MISSING],
      [2, 3, 4],
      [3, 4, 5],
    ],
    codes: ["log.text-cell 1 2"],
  },
  {
    why: "lines of delimiters that a spreadsheet leaves",
    text: "a,b\n1,2\n2,3\n,\n,\n",
    rows: [
      [1, 2],
      [2, 3],
    ],
    codes: [],
  },
  {
    why: "a number no double can hold",
    text: "a,b\n1,2\n2,1e999\n3,4\n",
    rows: [
      [1, 2],
      [2, MISSING],
      [3, 4],
    ],
    codes: ["log.text-cell 1 3"],
  },
])("$why: nothing is lost in silence", ({ text, rows, codes }) => {
  expect(rowsOf(text)).toEqual(rows);
  expect(codesOf(text)).toEqual(codes);
});

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

test("a header in the middle marks the restart of the logger", () => {
  const table = read("a,b\ns,N\n1,2\n2,3\na,b\ns,N\n0,2\n1,3\n");
  expect(table.restarts).toEqual([2]);
  expect([...table.columns[0]!]).toEqual([1, 2, 0, 1]);
  expect([...table.lineNumbers]).toEqual([3, 4, 7, 8]);
});

test("each row knows its line, past blank lines and comments", () => {
  expect([...read("# x\n\na,b\n1,2\n\n2,3\n# y\n3,4").lineNumbers]).toEqual([4, 6, 8]);
});

test("the resolution is the smallest step that is written", () => {
  expect(read("a,b,c,d\n1.50,1500,2e-3,\n2.5,1,1,\n").resolutions).toEqual([0.01, 1, 0.001, null]);
});

test("repairs say what, how often and where, with the number of the column where headers repeat", () => {
  const { repairs } = read("F,F\n1,2\n2,ovf\n3,ovf\n");
  expect(repairs.map(({ message }) => message)).toEqual([
    '2 cells of column 2 "F" held "ovf", taken as missing; first on line 3.',
  ]);
});

test("the preview holds the first eight rows as written", () => {
  const text = `a,b\n${Array.from({ length: 20 }, (_, i) => `${i}.50, x${i}`).join("\n")}\n`;
  expect(read(text).preview).toHaveLength(8);
  expect(read(text).preview[1]).toEqual(["1.50", "x1"]);
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

/** Rows of a scale at every second row, of a tachometer at the others. */
const apart = (rows: readonly string[], header = "ms,thrust (g),rpm,temp (C)") => `${header}\n${rows.join("\n")}\n`;
const PACES = Array.from({ length: 60 }, (_, i) => (i % 3 === 1 ? `${i},,${2000 + i},` : `${i},${100 + i},,`));

test("rows of two instruments are joined at the slower one, the other averaged from halfway to halfway", () => {
  const [first, second, ...more] = rowsOf(apart(PACES));
  expect(first).toEqual([1, (100 + 102) / 2, 2001, MISSING]);
  expect(second).toEqual([4, (103 + 105) / 2, 2004, MISSING]);
  expect(more).toHaveLength(18);
  expect(codesOf(apart(PACES))).toContain("log.interleaved-rows 40 3");
});

test("a thermometer on rows of its own does not take the rows of the others away", () => {
  const rows = Array.from({ length: 250 }, (_, i) => (i % 10 === 9 ? `${i},,,18.${i % 7}` : `${i},${100 + i},2000,`));
  expect(rowsOf(apart(rows))).toHaveLength(250);
});

test("rows stay apart where a person refused to have them joined", () => {
  const bytes = new TextEncoder().encode(apart(PACES));
  expect(readLog(bytes, "stand.csv", { refusedRepairs: ["log.interleaved-rows"] }).rows).toBe(60);
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

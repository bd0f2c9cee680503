import { expect, test } from "vitest";
import { readLog } from "../../shared/log/readLog.ts";
import { MISSING, read, rowsOf } from "./logText.ts";

const codesOf = (text: string) =>
  read(text).repairs.map(({ code, count, firstLine }) => `${code} ${count} ${firstLine}`);

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

import { expect, test } from "vitest";
import { readLog } from "../../shared/log/readLog.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";

const TEXT = "time (s),temp (°C)\n0.5,18.5\n1.5,18.75\n";
const utf16 = (text: string, bigEndian: boolean) => {
  const bytes = Buffer.from(text, "utf16le");
  return bigEndian ? bytes.swap16() : bytes;
};

test.each([
  { why: "UTF-8", bytes: Buffer.from(TEXT), encoding: "utf-8" },
  { why: "UTF-8 with a byte order mark", bytes: Buffer.from(`\ufeff${TEXT}`), encoding: "utf-8" },
  { why: "UTF-16LE with a byte order mark", bytes: utf16(`\ufeff${TEXT}`, false), encoding: "utf-16le" },
  { why: "UTF-16BE with a byte order mark", bytes: utf16(`\ufeff${TEXT}`, true), encoding: "utf-16be" },
  { why: "UTF-16LE without a mark", bytes: utf16(TEXT, false), encoding: "utf-16le" },
  { why: "UTF-16BE without a mark", bytes: utf16(TEXT, true), encoding: "utf-16be" },
  { why: "windows-1252", bytes: Buffer.from(TEXT, "latin1"), encoding: "windows-1252" },
])("$why is read with its degree sign", ({ bytes, encoding }) => {
  const table = readLog(bytes, "stand.csv");
  expect(table.shape.encoding).toBe(encoding);
  expect(table.shape.columns.map(({ header }) => header)).toEqual(["time (s)", "temp (°C)"]);
  expect(table.columns.map((column) => [...column])).toEqual([
    [0.5, 1.5],
    [18.5, 18.75],
  ]);
});

test("a long UTF-16 log goes through the column reader too", () => {
  const rows = Array.from({ length: 30_000 }, (_, i) => `${i},${i / 4}`).join("\r\n");
  const table = readLog(utf16(`\ufeffa,b\r\n${rows}\r\n`, false), "stand.csv");
  expect(table.rows).toBe(30_000);
  expect(table.columns[1]![29_999]).toBe(29_999 / 4);
  expect(table.columnReaderRows).toBeGreaterThan(29_900);
});

const refusal = (bytes: Uint8Array) => {
  try {
    readLog(bytes, "stand.csv");
  } catch (error) {
    if (error instanceof InputProblem) return { code: error.problem.code, message: error.message };
    throw error;
  }
  return { code: "read", message: "" };
};

test.each([
  { why: "nothing", bytes: Buffer.from(""), code: "log.empty", says: "no text" },
  { why: "blank lines", bytes: Buffer.from("\n \n\n"), code: "log.empty", says: "no text" },
  { why: "a workbook", bytes: Buffer.from("504b030414000600", "hex"), code: "log.binary", says: "workbook" },
  {
    why: "random bytes",
    bytes: Buffer.from("0102fe00c3280007", "hex"),
    code: "log.binary",
    says: "01 02 fe 00 c3 28 00 07",
  },
  { why: "zero bytes alone", bytes: Buffer.alloc(1000), code: "log.binary", says: "00 00" },
  {
    why: "a letter",
    bytes: Buffer.from("Dear builder,\nthe log follows.\n"),
    code: "log.no-numbers",
    says: "Dear builder",
  },
  { why: "a header alone", bytes: Buffer.from("time,thrust\n"), code: "log.no-numbers", says: "time,thrust" },
  {
    why: "one column",
    bytes: Buffer.from("thrust\n1.5\n2.5\n"),
    code: "log.one-column",
    says: "one number on each line",
  },
  {
    why: "the comma in both uses",
    bytes: Buffer.from("time,thrust\n0,1,2,5\n0,2,2,6\n"),
    code: "log.comma-twice",
    says: "line 2",
  },
  {
    why: "a thousand columns",
    bytes: Buffer.from(`${"1,".repeat(999)}1\n`),
    code: "log.too-many-columns",
    says: "1000 cells",
  },
  {
    why: "a line without end",
    bytes: Buffer.from(`a,b\n1,2\n${"3".repeat(600_000)}`),
    code: "log.line-too-long",
    says: "line 3",
  },
])("$why is refused: $code", ({ bytes, code, says }) => {
  const { code: found, message } = refusal(bytes);
  expect(found).toBe(code);
  expect(message).toContain("stand.csv");
  expect(message).toContain(says);
});

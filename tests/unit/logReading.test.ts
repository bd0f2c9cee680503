import { expect, test } from "vitest";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { LogReading, REFUSABLE_REPAIRS } from "../../shared/model/reading.ts";

const read = (text: string, reading: LogReading = {}) => readLog(new TextEncoder().encode(text), "stand.csv", reading);
const codes = (table: ReturnType<typeof read>) => table.repairs.map(({ code }) => code);
const rows = (table: ReturnType<typeof read>) =>
  Array.from({ length: table.rows }, (_, row) => table.columns.map((column) => column[row]));
const HEAD = "time,thrust,rpm\n0,1,10\n1,2,20\n2,3,30\n";

test.each([
  {
    code: "log.comment",
    text: `${HEAD}#3,4,40\n4,5,50\n`,
    made: [0, 1, 2, 4],
    refused: [0, 1, 2, 3, 4],
  },
  { code: "log.short-row", text: `${HEAD}3,4\n4,5,50\n`, made: [0, 1, 2, 3, 4], refused: [0, 1, 2, 4] },
  { code: "log.long-row", text: `${HEAD}3,4,40,9\n4,5,50\n`, made: [0, 1, 2, 3, 4], refused: [0, 1, 2, 4] },
  { code: "log.text-cell", text: `${HEAD}3,bad,40\n4,5,50\n`, made: [0, 1, 2, 3, 4], refused: [0, 1, 2, 4] },
  {
    code: "log.other-decimals",
    text: "time;thrust;rpm\n0.5;1;10\n1.5;2;20\n2.5;3;30\n3,5;4,5;40\n4.5;5;50\n",
    made: [0.5, 1.5, 2.5, 3.5, 4.5],
    refused: [0.5, 1.5, 2.5, 4.5],
  },
] as const)("$code can be refused; it is still listed, with what was done instead", ({ code, text, made, refused }) => {
  expect([...read(text).columns[0]!]).toEqual(made);
  const table = read(text, { refusedRepairs: [code] });
  expect([...table.columns[0]!]).toEqual(refused);
  expect(table.repairs.find((repair) => repair.code === code)).toMatchObject({
    refusable: true,
    refused: true,
    firstLine: 5,
  });
  expect(table.repairs.find((repair) => repair.code === code)!.message).toContain("as you chose");
});

test("a repeated header that is refused is no new start", () => {
  const text = `${HEAD}time,thrust,rpm\n3,4,40\n`;
  expect(read(text).restarts).toEqual([3]);
  expect(read(text, { refusedRepairs: ["log.repeated-header"] }).restarts).toEqual([]);
});

test("the last number of a file that stops in the middle of a line is kept where a person says so", () => {
  const text = `${HEAD}3,4`;
  expect(rows(read(text)).at(-1)).toEqual([3, Number.NaN, Number.NaN]);
  expect(rows(read(text, { refusedRepairs: ["log.cut-line"] })).at(-1)).toEqual([3, 4, Number.NaN]);
});

test.each([
  { thousands: "certain", reads: Number.NaN, told: "log.unclear-mark" },
  { thousands: "always", reads: 1234, told: "log.thousands" },
  { thousands: "never", reads: Number.NaN, told: "log.unclear-mark" },
] as const)("1.234 beside decimal commas: $thousands", ({ thousands, reads, told }) => {
  const table = read("time;thrust;rpm\n0,5;1,5;10\n1,5;2,5;1.234\n2,5;3,5;30\n", { thousands });
  expect(table.columns[2]![1]).toEqual(reads);
  expect(codes(table)).toContain(told);
});

test("the decimal mark may be stated: 1,234 between semicolons is 1.234 or, as thousands, 1234", () => {
  const text = "time;thrust;rpm\n0;1;1,234\n1;2;2,345\n2;3;3,456\n";
  expect(read(text).columns[2]![0]).toBe(1.234);
  expect(read(text, { decimalMark: ".", thousands: "always" }).columns[2]![0]).toBe(1234);
});

test("delimiter, header line, first data line and encoding may be stated", () => {
  expect(read("a,b\n1,2;3\n4,5;6\n", { delimiter: ";", decimalMark: "," }).columns.map(([first]) => first)).toEqual([
    1.2, 3,
  ]);
  const text = "old,names,x\ntime,thrust,rpm\n0,1,10\n1,2,20\n2,3,30\n";
  const stated = read(text, { headerLine: 1 });
  expect(stated.shape.columns.map(({ header }) => header)).toEqual(["old", "names", "x"]);
  expect(codes(stated)).toContain("log.preamble");
  expect(read(text, { headerLine: null }).shape.columns.every(({ header }) => header === "")).toBe(true);
  expect([...read(text, { firstDataLine: 4 }).columns[0]!]).toEqual([1, 2]);
  const latin = readLog(
    Uint8Array.from("t \xb5s,b\n1,2\n", (letter) => letter.charCodeAt(0)),
    "stand.csv",
    { encoding: "windows-1252" },
  );
  expect(latin.shape.columns[0]!.header).toBe("t µs");
});

test("a reading that leaves no rows, or names no header, is refused and says how to go back", () => {
  const problem = (reading: LogReading) => {
    try {
      read(HEAD, reading);
    } catch (error) {
      return (error as { problem: { code: string; mend: string } }).problem;
    }
    return null;
  };
  expect(problem({ delimiter: "|" })).toMatchObject({
    code: "log.reading-fits-nothing",
    mend: expect.stringMatching(/go back/i),
  });
  expect(problem({ headerLine: 9 })?.code).toBe("log.reading-fits-nothing");
});

test("without a stated reading nothing changes, and every refusable repair is known to the schema", () => {
  expect(read(HEAD, LogReading.parse({}))).toEqual(read(HEAD));
  expect(LogReading.parse({ refusedRepairs: [...REFUSABLE_REPAIRS] }).refusedRepairs).toHaveLength(
    REFUSABLE_REPAIRS.length,
  );
});

const counter = (values: readonly number[]) =>
  `clock,thrust\n${values.map((value, i) => `${value},${i}`).join("\n")}\n`;
const steps = (from: number, step: number, count: number, size: number) =>
  Array.from({ length: count }, (_, i) => (((from + i * step) % size) + size) % size);

test.each([
  { what: "32-bit milliseconds", values: steps(2 ** 32 - 500, 20, 60, 2 ** 32) },
  { what: "32-bit microseconds", values: steps(2 ** 32 - 500_000, 20_000, 60, 2 ** 32) },
  { what: "16-bit milliseconds", values: steps(2 ** 16 - 400, 20, 60, 2 ** 16) },
  { what: "16-bit milliseconds, three times", values: steps(0, 100, 2000, 2 ** 16) },
  {
    what: "signed 32-bit milliseconds",
    values: steps(2 ** 31 - 400, 20, 60, 2 ** 32).map((v) => (v >= 2 ** 31 ? v - 2 ** 32 : v)),
  },
])("$what that run over are carried on, told, and left alone when refused", ({ values }) => {
  const step = values[1]! - values[0]!;
  const table = read(counter(values));
  const clock = table.columns[0]!;
  expect([...clock].every((value, i) => i === 0 || value - clock[i - 1]! === step)).toBe(true);
  expect(codes(table)).toEqual(["log.clock-rollover"]);
  expect(inspectLog(table).warnings.map(({ code }) => code)).not.toContain("log.time-jumps-back");
  const refused = read(counter(values), { refusedRepairs: ["log.clock-rollover"] });
  expect([...refused.columns[0]!]).toEqual(values);
  expect(refused.repairs[0]).toMatchObject({ code: "log.clock-rollover", refused: true });
});

test("seconds made from a counter of microseconds run over at 4294.967 s", () => {
  const values = steps(2 ** 32 - 1e6, 50_000, 60, 2 ** 32).map((us) => (us / 1e6).toFixed(3));
  const clock = read(`clock (s),thrust\n${values.map((value, i) => `${value},${i}`).join("\n")}\n`).columns[0]!;
  expect([...clock].every((value, i) => i === 0 || Math.abs(value - clock[i - 1]! - 0.05) < 0.0015)).toBe(true);
});

test.each([
  { what: "a logger that started again", text: counter([...steps(0, 20, 50, 1e9), ...steps(0, 20, 50, 1e9)]) },
  { what: "a header at the fall", text: `${counter(steps(65_000, 20, 26, 1e9))}clock,thrust\n4,1\n24,2\n44,3\n` },
  { what: "a column that is no clock", text: counter(Array.from({ length: 60 }, (_, i) => (i % 2 ? 65_530 : 3))) },
])("$what is no rollover", ({ text }) => {
  expect(codes(read(text))).not.toContain("log.clock-rollover");
});

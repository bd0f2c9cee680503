import fc from "fast-check";
import { expect, test } from "vitest";
import { LogReader, readLog } from "../../shared/log/readLog.ts";
import type { LogTable } from "../../shared/log/logTable.ts";

const bytesOf = (text: string) => new TextEncoder().encode(text);
const NUMBERS = 40;

/** Decimal texts of every kind a logger writes, and the ones that are hard to round. */
const decimal = fc.oneof(
  { weight: 4, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }).map(String) },
  { weight: 4, arbitrary: fc.tuple(fc.integer(), fc.integer({ min: 0, max: 12 })).map(([n, d]) => (n / 10 ** d).toFixed(d)) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom("", "-", "+"), fc.bigInt({ min: 0n, max: 10n ** 25n }), fc.integer({ min: -330, max: 320 }))
      .map(([sign, digits, power]) => `${sign}${digits}e${power}`)
      .filter((text) => Number.isFinite(Number(text))),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom("-0", "0.000", ".5", "5.", "+7.25", "00012.50", "9007199254740993", "9007199254740992", "1e23", "8.41e21", "1E5", "2.2250738585072011e-308", "5e-324"),
  },
);
const body = fc.array(fc.tuple(decimal, decimal, decimal), { minLength: NUMBERS, maxLength: 60 });

/** Everything of a table that must not depend on the way it was read. */
const outcome = ({ columns, lineNumbers, resolutions, rows, preview, restarts }: LogTable) => ({
  bits: columns.map((column) => [...new BigUint64Array(column.slice().buffer)]),
  lineNumbers: [...lineNumbers],
  resolutions,
  rows,
  preview,
  restarts,
});

test("the column reader, the cell reader and the language's own conversion agree to the last bit", () => {
  fc.assert(
    fc.property(body, fc.constantFrom(",", ";", "\t", " "), (rows, delimiter) => {
      const header = ["a", "b", "c"].join(delimiter);
      const regular = rows.map((row) => row.join(delimiter));
      const quoted = rows.map(([first, ...rest]) => [`"${first}"`, ...rest].join(delimiter));
      // Each row twice: what is new in a row goes to the cell reader, so that every text meets the column reader too.
      const twice = (lines: string[]) => `${[header, ...lines, ...lines].join("\n")}\n`;
      const fast = readLog(bytesOf(twice(regular)), "regular.csv");
      const slow = readLog(bytesOf(twice(quoted)), "quoted.csv");
      expect(outcome(fast)).toEqual(outcome(slow));
      const expected = [...rows, ...rows];
      fast.columns.forEach((column, c) => {
        column.forEach((value, row) => {
          expect(Object.is(value, Number(expected[row]![c]))).toBe(true);
        });
      });
      expect(fast.columnReaderRows).toBeGreaterThanOrEqual(rows.length - 16);
      expect(slow.columnReaderRows).toBe(0);
    }),
    { numRuns: 300 },
  );
});

test("a decimal comma gives the same bits as a decimal point", () => {
  fc.assert(
    fc.property(body, (rows) => {
      const text = `a;b;c\n${rows.map((row) => row.join(";")).join("\n")}\n0.5;0.5;0.5\n`;
      const point = readLog(bytesOf(text), "point.csv");
      const comma = readLog(bytesOf(text.replaceAll(".", ",")), "comma.csv");
      expect(comma.shape.decimalMark).toBe(",");
      expect(outcome({ ...comma, preview: [] })).toEqual(outcome({ ...point, preview: [] }));
    }),
  );
});

/** Lines of a log as they come from a bad day: regular ones among everything else. */
const line = fc.oneof(
  { weight: 12, arbitrary: fc.tuple(fc.integer({ min: 0, max: 99999 }), decimal, decimal).map((cells) => cells.join(",")) },
  {
    weight: 3,
    arbitrary: fc.constantFrom("", "# note", "time,thrust,rpm", "1,,3", "1,ovf,3", "1,2", "1,2,3,4", "1,2,3,", '"1",2,3', '1,"2,3', "end", " 1 , 2 ,3 ", ",,", "1\t,2,3", "4,5,6\r", "--,--,--", "7,8,9\0\0"),
  },
);

test("chunks may end anywhere: the table is the same", () => {
  fc.assert(
    fc.property(
      fc.array(line, { minLength: 3, maxLength: 80 }),
      fc.constantFrom("\n", "\r\n", "\r"),
      fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 20 }),
      fc.boolean(),
      (lines, lineEnd, sizes, isUtf16) => {
        const text = ["time,thrust,rpm", "0,1,2", "1,2,3", "2,3,4", ...lines].join(lineEnd);
        const bytes = isUtf16 ? Buffer.from(`\ufeff${text}`, "utf16le") : bytesOf(text);
        const whole = readLog(bytes, "stand.csv");
        const reader = new LogReader("stand.csv");
        for (let at = 0, i = 0; at < bytes.length; i++) {
          const size = sizes[i % sizes.length]!;
          reader.push(bytes.subarray(at, at + size));
          at += size;
        }
        expect(reader.end()).toEqual(whole);
      },
    ),
    { numRuns: 300 },
  );
});

test("chunks may end anywhere in a log of many blocks", () => {
  const rows = Array.from({ length: 60_000 }, (_, i) => (i % 977 === 0 ? `${i},ovf,3` : `${i},${i / 8},${i % 7}`));
  const bytes = bytesOf(`time,thrust,rpm\r\n${rows.join("\r\n")}\r\n`);
  const whole = readLog(bytes, "stand.csv");
  expect(whole.rows).toBe(60_000);
  for (const size of [4093, 65_536, 262_144, 262_145]) {
    const reader = new LogReader("stand.csv");
    for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size));
    expect(reader.end()).toEqual(whole);
  }
});

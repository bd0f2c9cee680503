import fc from "fast-check";
import { expect, test } from "vitest";
import type { LogTable } from "../../shared/log/logTable.ts";
import { LogReader, readLog } from "../../shared/log/readLog.ts";

const bytesOf = (text: string) => new TextEncoder().encode(text);

/** Decimal texts of every kind a logger writes, and the ones that are hard to round. */
const decimal = fc.oneof(
  { weight: 4, arbitrary: fc.double({ noNaN: true, noDefaultInfinity: true }).map(String) },
  {
    weight: 4,
    arbitrary: fc.tuple(fc.integer(), fc.integer({ min: 0, max: 12 })).map(([n, d]) => (n / 10 ** d).toFixed(d)),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(
        fc.constantFrom("", "-", "+"),
        fc.bigInt({ min: 0n, max: 10n ** 25n }),
        fc.integer({ min: -330, max: 320 }),
      )
      .map(([sign, digits, power]) => `${sign}${digits}e${power}`)
      .filter((text) => Number.isFinite(Number(text))),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      "-0",
      "0.000",
      ".5",
      "5.",
      "+7.25",
      "00012.50",
      "9007199254740993",
      "9007199254740992",
      "1e23",
      "8.41e21",
      "1E5",
      "2.2250738585072011e-308",
      "5e-324",
    ),
  },
);
const body = fc.array(fc.tuple(decimal, decimal, decimal), { minLength: 1, maxLength: 40 });

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
      // The first rows are read cell by cell and settle how many decimals there are; all others are then regular.
      const first = Array.from({ length: 16 }, () => ["0e-400", "0e-400", "0e-400"]);
      const all = [...first, ...rows];
      const regular = all.map((row) => row.join(delimiter));
      // A blank that is no plain blank is nothing for the column reader.
      const odd = all.map(([cell, ...rest]) => [`\u2002${cell}`, ...rest].join(delimiter));
      const quoted = all.map((row) => row.map((cell) => `"${cell}"`).join(delimiter));
      const fast = readLog(bytesOf(`${[header, ...regular].join("\n")}\n`), "regular.csv");
      const slow = readLog(bytesOf(`${[header, ...odd].join("\n")}\n`), "odd.csv");
      const inQuotes = readLog(bytesOf(`${[header, ...quoted].join("\n")}\n`), "quoted.csv");
      expect(outcome(fast)).toEqual(outcome(slow));
      expect(outcome(fast)).toEqual(outcome(inQuotes));
      const isSame = (value: number, row: number, column: number) => Object.is(value, Number(all[row]![column]));
      fast.columns.forEach((column, c) => {
        expect(column.every((value, row) => isSame(value, row, c))).toBe(true);
      });
      expect(fast.columnReaderRows).toBe(rows.length);
      expect(inQuotes.columnReaderRows).toBe(rows.length);
      expect(slow.columnReaderRows).toBe(0);
    }),
    { numRuns: 300 },
  );
});

const clock = fc
  .tuple(fc.integer({ min: 0, max: 3 * 86_400_000 }), fc.integer({ min: 0, max: 3 }))
  .map(([milliseconds, decimals]) => {
    const text = new Date(1_780_000_000_000 + milliseconds).toISOString();
    return decimals === 0 ? `${text.slice(0, 19)}Z` : `${text.slice(0, 20 + decimals)}Z`;
  });

test("clock times are the same seconds through both readers, and those between the dates", () => {
  fc.assert(
    fc.property(fc.array(clock, { minLength: 1, maxLength: 40 }), (clocks) => {
      const all = [...Array.from({ length: 16 }, () => "2026-05-28T20:26:40.000Z"), ...clocks];
      const fast = readLog(bytesOf(`when,a\n${all.map((one) => `${one},1`).join("\n")}\n`), "regular.csv");
      const slow = readLog(bytesOf(`when,a\n${all.map((one) => `${one},\u20021`).join("\n")}\n`), "odd.csv");
      expect(outcome({ ...fast, preview: [] })).toEqual(outcome({ ...slow, preview: [] }));
      expect([fast.columnReaderRows, slow.columnReaderRows]).toEqual([clocks.length, 0]);
      const expected = all.map((one) => (Date.parse(one) - Date.parse(all[0]!)) / 1000);
      expect([...fast.columns[0]!]).toEqual(expected);
    }),
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
  {
    weight: 12,
    arbitrary: fc.tuple(fc.integer({ min: 0, max: 99999 }), decimal, decimal).map((cells) => cells.join(",")),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      "",
      "# note",
      "time,thrust,rpm",
      "1,,3",
      "1,ovf,3",
      "1,2",
      "1,2,3,4",
      "1,2,3,",
      '"1",2,3',
      '1,"2,3',
      "end",
      " 1 , 2 ,3 ",
      ",,",
      "1\t,2,3",
      "4,5,6\r",
      "--,--,--",
      "7,8,9\0\0",
    ),
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

import fc from "fast-check";
import { expect, test } from "vitest";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";

const bytesOf = (text: string) => new TextEncoder().encode(text);
const HEADER = ["time (s)", "throttle (us)", "thrust (gf)", "rpm", "supply (V)"];
const ROWS = Array.from({ length: 60 }, (_, i) => [
  (i * 0.05).toFixed(2),
  String(1500 + 50 * Math.floor(i / 10)),
  (((i * 37) % 101) / 3).toFixed(1),
  String(((i * 53) % 400) + 900),
  (14.8 - ((i * 7) % 13) / 50).toFixed(2),
]);
const text = (order: readonly number[], delimiter = ",", rows = ROWS) =>
  [HEADER, ...rows].map((row) => order.map((column) => row[column]).join(delimiter)).join("\n");
const STRAIGHT = [0, 1, 2, 3, 4];
const PLAIN = readLog(bytesOf(text(STRAIGHT)), "plain.csv");
const order = fc.shuffledSubarray(STRAIGHT, { minLength: 5 });

test("shuffled columns hold the same numbers and get the same roles", () => {
  const plainGuesses = inspectLog(PLAIN).guesses;
  fc.assert(
    fc.property(order, fc.constantFrom(",", ";", "\t", "|"), (columns, delimiter) => {
      const table = readLog(bytesOf(text(columns, delimiter)), "shuffled.csv");
      const { guesses } = inspectLog(table);
      columns.forEach((column, at) => {
        expect(table.columns[at]).toEqual(PLAIN.columns[column]);
        const { role, unit } = guesses[at]!;
        expect({ role, unit }).toEqual({ role: plainGuesses[column]!.role, unit: plainGuesses[column]!.unit });
      });
    }),
  );
});

const preambleLine = fc.oneof(
  fc.constantFrom(
    "",
    "# bench log",
    "Propeller: P3",
    "Date;2026-05-03;10:00",
    "Diameter, 76 mm",
    "-----",
    "// firmware 7",
    "tank 18 degC, still",
  ),
  fc.stringMatching(/^[A-Za-z][A-Za-z :.]{0,30}$/),
);

test("lines above the header change no value", () => {
  fc.assert(
    fc.property(fc.array(preambleLine, { maxLength: 12 }), (preamble) => {
      const table = readLog(bytesOf([...preamble, text(STRAIGHT)].join("\n")), "preamble.csv");
      expect(table.columns).toEqual(PLAIN.columns);
      expect(table.shape.headerLine).toBe(preamble.length + 1);
      expect(table.shape.columns).toEqual(PLAIN.shape.columns);
    }),
    { numRuns: 500 },
  );
});

interface Edit {
  readonly at: number;
  readonly kind: "replace" | "insert" | "delete" | "repeat" | "cut";
  readonly bytes: readonly number[];
  readonly length: number;
}

const edit: fc.Arbitrary<Edit> = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  kind: fc.constantFrom("replace", "insert", "delete", "repeat", "cut"),
  bytes: fc.array(
    fc.oneof(
      fc.integer({ min: 0, max: 255 }),
      fc.constantFrom(...[..."\",;\t|\r\n.-+e:#%/ 0:xN'\0"].map((c) => c.charCodeAt(0))),
    ),
    { minLength: 1, maxLength: 6 },
  ),
  length: fc.integer({ min: 1, max: 200 }),
});

function edited(bytes: Uint8Array, { at, kind, bytes: news, length }: Edit): Uint8Array {
  const start = Math.floor(at * bytes.length);
  const [before, after] = [bytes.subarray(0, start), bytes.subarray(start)];
  const joined = (...parts: readonly (Uint8Array | readonly number[])[]) =>
    new Uint8Array(Buffer.concat(parts.map((part) => Uint8Array.from(part))));
  switch (kind) {
    case "replace":
      return joined(before, news, after.subarray(news.length));
    case "insert":
      return joined(before, news, after);
    case "delete":
      return joined(before, after.subarray(length));
    case "repeat":
      return joined(before, after.subarray(0, length), after);
    case "cut":
      return before;
  }
}

/** Enough rows for both readers: the first sixteen go through the cell reader. */
const short = (delimiter?: string) => text(STRAIGHT, delimiter, ROWS.slice(0, 26));
const objects = ROWS.slice(0, 20).map((row) => ({
  time: Number(row[0]),
  thrust_N: Number(row[2]),
  rpm: Number(row[3]),
}));

const goodLog = fc.constantFrom(
  bytesOf(short()),
  bytesOf(short(";").replaceAll(".", ",")),
  bytesOf(short("  ")),
  bytesOf(short(" | ")),
  bytesOf(`# stand\n${short("\t")}\n`),
  bytesOf(short().replaceAll(/^(\d)/gm, "10:00:0$1")),
  new Uint8Array(Buffer.from(`\ufeff${short()}`, "utf16le")),
  bytesOf(JSON.stringify(objects, null, 1)),
);

/** Lines that hold anything, as the reader sees them: without padding, blank lines and drawn rules. */
function heldLines(bytes: Uint8Array, { shape, repairs }: LogTable): number {
  const json = repairs.find(({ code }) => code === "log.json");
  if (json) return json.count + 1;
  const isPadded = repairs.some(({ code }) => code === "log.padding");
  const bare = bytes.filter(
    (byte) => !isPadded || shape.encoding.startsWith("utf-16") || (byte !== 0 && byte !== 0xff),
  );
  const text = new TextDecoder(shape.encoding).decode(bare).replaceAll("\0", "");
  return text.split(/\r\n|\n|\r/).filter((line) => /[^\s\u00a0|:+=_\-,;".]/.test(line)).length;
}

const LINES_LEFT_OUT = ["log.comment", "log.preamble", "log.text-line", "log.repeated-header"];
const CELLS_MISSING = ["log.empty-cell", "log.missing-cell", "log.text-cell", "log.unclear-mark"];
const CELLS_OF_ROWS = ["log.short-row", "log.cut-line", "log.text-column"];

const counted = ({ repairs }: LogTable, codes: readonly string[]) =>
  repairs.filter(({ code }) => codes.includes(code)).reduce((sum, { count }) => sum + count, 0);

/** Every line is a row, a header or told of; every missing cell is told of. */
function expectAllTold(bytes: Uint8Array, table: LogTable): void {
  const { shape, repairs } = table;
  const isJoined = repairs.some(({ code }) => code === "log.header-rows");
  const heads = [shape.headerLine, shape.unitsLine, isJoined ? 1 : null].filter((line) => line !== null).length;
  // A cell in quotes may run over several lines above the rows, and over five elsewhere; a row of units may stand under
  // each header.
  const slack = new TextDecoder().decode(bytes).includes('"') ? Math.max(4, (shape.headerLine ?? 1) - 1) : 0;
  const units = shape.unitsLine === null ? 0 : counted(table, ["log.repeated-header"]);
  const accounted = table.rows + heads + counted(table, LINES_LEFT_OUT) + slack + units;
  expect(accounted).toBeGreaterThanOrEqual(heldLines(bytes, table));
  const missing = table.columns.reduce((sum, column) => sum + column.filter(Number.isNaN).length, 0);
  if (counted(table, CELLS_OF_ROWS) === 0) expect(counted(table, CELLS_MISSING)).toBe(missing);
  else expect(counted(table, [...CELLS_MISSING, ...CELLS_OF_ROWS])).toBeGreaterThan(0);
}

test("a log damaged in any way is read or refused with a readable problem, every row is whole, and nothing is lost unsaid", () => {
  fc.assert(
    fc.property(goodLog, fc.array(edit, { minLength: 1, maxLength: 8 }), (log, edits) => {
      const bytes = edits.reduce(edited, log);
      try {
        const table = readLog(bytes, "damaged.csv");
        expectAllTold(bytes, table);
        const { guesses, warnings } = inspectLog(table);
        expect(guesses).toHaveLength(table.columns.length);
        for (const column of table.columns) expect(column).toHaveLength(table.rows);
        expect(
          table.columns.every((column) => column.every((value) => Math.abs(value) !== Number.POSITIVE_INFINITY)),
        ).toBe(true);
        expect([...table.lineNumbers].every((line, row, all) => row === 0 || line > all[row - 1]!)).toBe(true);
        const sentences = [...warnings, ...table.repairs].map(({ message }) => message).join(" ");
        expect(sentences).not.toMatch(/\bNaN\b(?!")|undefined|Infinity/);
        const roles = guesses.map(({ role }) => role).filter((role) => role !== "ignore");
        expect(new Set(roles).size).toBe(roles.length);
      } catch (error) {
        if (!(error instanceof InputProblem)) throw error;
        expect(error.problem.code).toMatch(/^log\.[a-z-]+$/);
        expect(error.message).toContain("damaged.csv");
      }
    }),
    { numRuns: 10_000 },
  );
}, 600_000);

test("bytes of any kind are read or refused with a readable problem", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      try {
        readLog(bytes, "any.csv");
      } catch (error) {
        if (!(error instanceof InputProblem)) throw error;
      }
    }),
    { numRuns: 2000 },
  );
});

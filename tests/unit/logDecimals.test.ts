import { expect, test } from "vitest";
import { readLog } from "../../shared/log/readLog.ts";

/**
 * Decimal texts that are hard to round, with the bits of the nearest IEEE 754 double as CPython 3.11.7 gives them:
 * struct.pack('>d', float(text)), whose conversion is David Gay's (Correctly Rounded Binary-Decimal and Decimal-Binary
 * Conversions, Numerical Analysis Manuscript 90-10, AT&T Bell Laboratories, 1990).
 */
const HARD = [
  { text: "0.1", bits: 0x3fb999999999999an },
  { text: "1e23", bits: 0x44b52d02c7e14af6n },
  { text: "9007199254740993", bits: 0x4340000000000000n },
  { text: "8.41e21", bits: 0x447c7e83209e90b2n },
  { text: "9214843084008499e-22", bits: 0x3eaeeb7d6c7e2372n },
  { text: "5e-324", bits: 0x0000000000000001n },
  { text: "2.2250738585072011e-308", bits: 0x000fffffffffffffn },
  { text: "0.500000000000000166533453693773481063544750213623046875", bits: 0x3fe0000000000002n },
  { text: "123456789012345678", bits: 0x437b69b4ba630f35n },
  { text: "7.2057594037927933e16", bits: 0x4370000000000000n },
  { text: "30078505129381147446200", bits: 0x44997a3c7271b021n },
  { text: "1.7976931348623157e308", bits: 0x7fefffffffffffffn },
];

test.each(HARD)("$text is read to the nearest double", ({ text, bits }) => {
  // The first sixteen rows are read cell by cell and hold the finest number; the last one is for the column reader.
  const lines = [...Array.from({ length: 16 }, (_, i) => `${i},1e-400`), `16,${text}`];
  const table = readLog(new TextEncoder().encode(`a,b\n${lines.join("\n")}\n`), "stand.csv");
  expect(table.columnReaderRows).toBe(1);
  expect(new BigUint64Array(table.columns[1]!.slice().buffer)[16]).toBe(bits);
});

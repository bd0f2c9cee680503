import { expect, test } from "vitest";
import { LineTally } from "../../shared/log/lineTally.ts";

test.each([
  { pieces: [""], lines: 0, whole: 0, why: "nothing" },
  { pieces: ["1,2"], lines: 0, whole: 0, why: "a line without its end" },
  { pieces: ["1,", "2\n3"], lines: 1, whole: 4, why: "a line cut between two pieces" },
  { pieces: ["1\r\n2\r\n"], lines: 2, whole: 6, why: "both marks are one end" },
  { pieces: ["1\r", "\n2\r", "\n"], lines: 2, whole: 6, why: "both marks, cut between them" },
  { pieces: ["1\r2\r3"], lines: 2, whole: 4, why: "carriage returns alone" },
  { pieces: ["1\n\n2\n"], lines: 3, whole: 5, why: "an empty line is a line" },
])("$pieces holds $lines whole lines in $whole bytes ($why)", ({ pieces, lines, whole }) => {
  const tally = new LineTally();
  for (const piece of pieces) tally.push(new TextEncoder().encode(piece));
  expect(tally).toMatchObject({ lines, wholeBytes: whole, bytes: pieces.join("").length });
});

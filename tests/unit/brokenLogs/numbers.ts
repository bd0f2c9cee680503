import {
  type BrokenLog,
  cellsOf,
  gramsOf,
  HEADER,
  half,
  MOMENTS,
  ROWS,
  utf8,
  withCell,
  written,
} from "./inventedRun.ts";

const commas = (text: string) => text.replaceAll(".", ",");

const grouped = (digits: string) => digits.replace(/(\d)(?=(\d{3})+$)/g, "$1'").replaceAll("'", ".");

function thousands(): string {
  // "1.900" beside decimal commas: one group of three, which only the comma elsewhere tells to be thousands.
  const rows = MOMENTS.map((moment) => cellsOf(moment).map((cell, c) => (c === 3 ? grouped(cell) : commas(cell))));
  return written({ rows, between: ";" });
}

const signed = (text: string) => (text.startsWith("-") ? text : `+${text}`);

const swiss = (digits: string) => digits.replace(/(\d)(?=(\d{3})+$)/g, "$1'");

/** How numbers can be written, and what can stand in their place. */
export const NUMBERS: readonly BrokenLog[] = [
  {
    name: "decimal mark changes",
    what: "decimal points up to the middle of the file and decimal commas after it",
    bytes: utf8(
      [...written({ between: ";" }).split("\n")].map((line, i) => (i > half ? commas(line) : line)).join("\n"),
    ),
    told: ["log.other-decimals"],
  },
  {
    name: "two decimal marks",
    what: "one column with decimal commas beside others with decimal points",
    bytes: utf8(written({ between: "\t", rows: withCell(2, (old) => commas(Number(old).toFixed(2))) })),
    told: ["log.other-decimals"],
  },
  {
    name: "semicolon and decimal comma",
    what: "semicolons between cells, commas in numbers",
    bytes: utf8(commas(written({ between: ";" }))),
    told: [],
  },
  {
    name: "comma twice",
    what: "a comma between cells and in numbers",
    bytes: utf8(commas(written({ rows: MOMENTS.map((moment) => cellsOf(moment)) }))),
    told: [],
    refused: { code: "log.comma-twice", where: "stand.csv, line 2" },
  },
  {
    name: "thousands",
    what: "decimal commas and a rotation rate with thousands points",
    bytes: utf8(thousands()),
    reading: { thousands: "always" },
    told: ["log.thousands"],
  },
  {
    name: "apostrophes",
    what: "an apostrophe between thousands",
    bytes: utf8(written({ rows: withCell(3, (old) => swiss(old)), between: ";" })),
    told: ["log.thousands"],
  },
  {
    name: "ovf nan --",
    what: "words where a number should be",
    bytes: utf8(
      written({ rows: withCell(2, (old, _, row) => (row % 37 === 3 ? ["ovf", "nan", "--"][row % 3]! : old)) }),
    ),
    told: ["log.missing-cell"],
  },
  {
    name: "dashes",
    what: "dashes and the words of foreign spreadsheets where a number is missing",
    bytes: utf8(
      written({ rows: withCell(2, (old, _, row) => (row % 37 === 3 ? ["—", "–", "#NV", "n.d."][row % 4]! : old)) }),
    ),
    told: ["log.missing-cell"],
  },
  {
    name: "weighing indicator",
    what: "readings of a weighing indicator with its status words, commas within",
    bytes: utf8(
      written({
        header: ["time (s)", "weight", "rpm"],
        rows: MOMENTS.map((moment, row) => [
          ROWS[row]![0]!,
          `${row % 40 < 9 ? "US" : "ST"},GS,${signed((Number(gramsOf(moment)) / 1000).toFixed(4))}kg`,
          ROWS[row]![3]!,
        ]),
      }),
    ),
    told: ["log.affix"],
  },
  {
    name: "sign apart",
    what: "a blank between sign and number, and grams in the cells under a header that says newton",
    bytes: utf8(
      written({
        rows: withCell(2, (_, moment) => `${signed(gramsOf(moment)).replace(/^[+-]/, "$& ")} g`),
        between: "\t",
      }),
    ),
    told: ["log.affix", "log.unit-disagrees"],
  },
  {
    name: "units change",
    what: "a scale that goes over from g to kg",
    bytes: utf8(
      written({
        header: ["time (s)", "throttle (us)", "thrust", ...HEADER.slice(3)],
        rows: withCell(2, (_, moment) => {
          const grams = Number(gramsOf(moment));
          return grams < 500 ? `${grams.toFixed(1)} g` : `${(grams / 1000).toFixed(4)} kg`;
        }),
      }),
    ),
    told: ["log.affix", "log.unit-in-cell"],
  },
  {
    name: "text by formula",
    what: 'cells written ="12.3" for a spreadsheet',
    bytes: utf8(written({ rows: ROWS.map((row) => row.map((cell) => `="${cell}"`)) })),
    told: [],
  },
  {
    name: "pulse in ms",
    what: "the throttle as a pulse of 1 to 2 ms",
    bytes: utf8(
      written({
        header: [HEADER[0]!, "throttle", ...HEADER.slice(2)],
        rows: withCell(1, (_, { pulse }) => (pulse / 1000).toFixed(3)),
      }),
    ),
    told: [],
  },
];

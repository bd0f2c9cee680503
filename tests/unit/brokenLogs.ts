import type { LogReading } from "../../shared/model/reading.ts";

/** Thrust coefficient behind every log here: T = K_T ρ n² D⁴ with D = 76 mm and ρ = 998.6 kg/m³ (fresh water of 18 °C). */
export const TRUE_THRUST_COEFFICIENT = 0.2;
const DENSITY = 998.6;
const DIAMETER = 0.076;
const GRAM_FORCE = 0.00980665;

/** One reading of the invented stand, in SI units but for the command. */
export interface Moment {
  readonly t: number;
  readonly pulse: number;
  readonly thrust: number;
  readonly rpm: number;
  readonly volts: number;
  readonly amps: number;
}

const STEPS = [0, 1200, 0, 1500, 0, 1900, 0, 2400, 0];
const PER_STEP = 80;

/** 10 readings a second, a rest between steps; small waves stand for noise. */
export const MOMENTS: readonly Moment[] = STEPS.flatMap((rpm, step) =>
  Array.from({ length: PER_STEP }, (_, k): Moment => {
    const i = step * PER_STEP + k;
    const wave = Math.sin(i * 2.399963);
    const amps = rpm === 0 ? 0.04 : 0.4 + 2.5 * (rpm / 2400) ** 3 + 0.005 * wave;
    return {
      t: i / 10,
      pulse: rpm === 0 ? 1500 : 1500 + rpm / 8,
      thrust: TRUE_THRUST_COEFFICIENT * DENSITY * (rpm / 60) ** 2 * DIAMETER ** 4 + 0.01 * wave,
      rpm: rpm === 0 ? 0 : rpm + 3 * Math.sin(i * 1.7),
      volts: 15 - 0.05 * amps,
      amps,
    };
  }),
);

const HEADER = ["time (s)", "throttle (us)", "thrust (N)", "speed (rpm)", "voltage (V)", "current (A)"];
const cellsOf = ({ t, pulse, thrust, rpm, volts, amps }: Moment) => [
  t.toFixed(1),
  pulse.toFixed(0),
  thrust.toFixed(3),
  rpm.toFixed(0),
  volts.toFixed(3),
  amps.toFixed(3),
];
const ROWS = MOMENTS.map(cellsOf);

interface Written {
  readonly header?: readonly string[];
  readonly rows?: readonly (readonly string[])[];
  readonly between?: string;
  readonly lineEnd?: string;
}
const written = ({ header = HEADER, rows = ROWS, between = ",", lineEnd = "\n" }: Written = {}) =>
  `${[header, ...rows].map((row) => row.join(between)).join(lineEnd)}${lineEnd}`;
const withCell = (column: number, cell: (old: string, moment: Moment, row: number) => string) =>
  MOMENTS.map((moment, row) => ROWS[row]!.map((old, c) => (c === column ? cell(old, moment, row) : old)));
const lines = written().split("\n");
const utf8 = (text: string) => new TextEncoder().encode(text);

export interface BrokenLog {
  readonly name: string;
  /** What is wrong with it, for the table of logs. */
  readonly what: string;
  readonly bytes: Uint8Array;
  /** A second log of the same run. */
  readonly companion?: Uint8Array;
  /** What a person states after reading what the page asks. */
  readonly stated?: { readonly [column: string]: string };
  /** How the person has it read instead. */
  readonly reading?: LogReading;
  readonly polePairs?: number;
  /** Codes of repairs and warnings that must be told. */
  readonly told: readonly string[];
  /** The answer has this sign. */
  readonly sign?: -1;
  /** It is refused with this code, at this place. */
  readonly refused?: { readonly code: string; readonly where: string };
}

const windows1252 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));
const utf16 = (text: string) => new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));
const commas = (text: string) => text.replaceAll(".", ",");
const mixedEnds = () => lines.map((line, i) => line + ["\n", "\r\n", "\r"][i % 3]).join("");
const grouped = (digits: string) => digits.replace(/(\d)(?=(\d{3})+$)/g, "$1'").replaceAll("'", ".");
const half = Math.floor(lines.length / 2);

function rollover(size: number, perSecond: number, name: string): string {
  const start = size - Math.round(30 * perSecond);
  const rows = withCell(0, (_, { t }) => String((start + Math.round(t * perSecond)) % size));
  return written({ header: [name, ...HEADER.slice(1)], rows });
}

function iso(): string {
  const from = Date.UTC(2026, 10, 25, 23, 59, 30);
  const rows = withCell(0, (_, { t }) => new Date(from + t * 1000).toISOString());
  return written({ header: ["time", ...HEADER.slice(1)], rows });
}

function restarted(): string {
  const end = MOMENTS[half]!.t;
  const rows = MOMENTS.map((moment) => cellsOf(moment.t < end ? moment : { ...moment, t: moment.t - end }));
  const at = MOMENTS.findIndex(({ t }) => t >= end);
  return [HEADER, ...rows.slice(0, at), HEADER, ...rows.slice(at)].map((row) => row.join(",")).join("\n");
}

function thousands(): string {
  // "1.900" beside decimal commas: one group of three, which only the comma elsewhere tells to be thousands.
  const rows = MOMENTS.map((moment) => cellsOf(moment).map((cell, c) => (c === 3 ? grouped(cell) : commas(cell))));
  return written({ rows, between: ";" });
}

/** The readings of one moment as a printing sketch words them. */
const printed = (line: (cells: readonly string[], moment: Moment, row: number) => string) =>
  `${MOMENTS.map((moment, row) => line(ROWS[row]!, moment, row)).join("\n")}\n`;
const gramsOf = ({ thrust }: Moment) => (thrust / GRAM_FORCE).toFixed(1);
const signed = (text: string) => (text.startsWith("-") ? text : `+${text}`);
const swiss = (digits: string) => digits.replace(/(\d)(?=(\d{3})+$)/g, "$1'");
const minutes = (t: number) =>
  `${Math.floor(t / 60)}:${Math.floor(t % 60)
    .toString()
    .padStart(2, "0")}`;

/** Four readings of each step and of the rests, as a page of a notebook. */
const notebook = () =>
  MOMENTS.filter((_, i) => i % 20 === 19)
    .map((moment, i) => [`14:${(5 + i).toString().padStart(2, "0")}`, ...cellsOf(moment).slice(2, 4)].join(","))
    .join("\n");

const plateauOnly = written({ rows: ROWS.filter((_, i) => Math.floor(i / PER_STEP) % 8 === 7 || i < PER_STEP) });

export const BROKEN_LOGS: readonly BrokenLog[] = [
  { name: "utf-16", what: "UTF-16 as a spreadsheet saves it", bytes: utf16(written({ between: "\t" })), told: [] },
  {
    name: "windows-1252",
    what: "windows-1252 with µ and ° in the header",
    bytes: windows1252(
      written({ header: ["time (s)", "throttle (µs)", ...HEADER.slice(2)] }).replace("(A)", "(A) 18°"),
    ),
    told: [],
  },
  { name: "line ends", what: "three kinds of line end in one file", bytes: utf8(mixedEnds()), told: [] },
  {
    name: "two header rows",
    what: "a row of group names above the names",
    bytes: utf8(`,,stand,stand,supply,supply\n${written()}`),
    told: ["log.header-rows"],
  },
  {
    name: "units row",
    what: "units on a line of their own",
    bytes: utf8(
      written({ header: ["time", "throttle", "thrust", "speed", "voltage", "current"] }).replace(
        "\n",
        "\ns,us,N,rpm,V,A\n",
      ),
    ),
    told: [],
  },
  {
    name: "preamble and footer",
    what: "lines of text above and below the table",
    bytes: utf8(`Thrust stand of the co-op\nOperator: nobody\n\n${written()}End of test\nRows: 720\n`),
    told: ["log.preamble", "log.text-line"],
  },
  {
    name: "restart",
    what: "the logger started again: header repeated, clock from zero",
    bytes: utf8(restarted()),
    told: ["log.repeated-header", "bench.time-restart"],
  },
  {
    name: "pages",
    what: "the header and a page number stand again after every 50 rows, the clock goes on",
    bytes: utf8(
      lines.map((line, i) => (i > 0 && i % 50 === 0 ? `Page ${i / 50}\n${lines[0]}\n${line}` : line)).join("\n"),
    ),
    told: ["log.repeated-header", "log.text-line"],
  },
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
    name: "one JSON text",
    what: "a list of objects on many lines, within the object that a web page sends",
    bytes: utf8(
      JSON.stringify(
        {
          stand: "barn",
          samples: MOMENTS.map(({ t, thrust, rpm }) => ({
            time: t,
            load: { thrust_N: Number(thrust.toFixed(3)) },
            rpm,
          })),
        },
        null,
        2,
      ),
    ),
    told: ["log.json"],
  },
  {
    name: "columns of JSON",
    what: "lists of numbers under names, all on one line",
    bytes: utf8(
      JSON.stringify({
        time_s: MOMENTS.map(({ t }) => t),
        thrust_N: MOMENTS.map(({ thrust }) => Number(thrust.toFixed(3))),
        rpm: MOMENTS.map(({ rpm }) => Math.round(rpm)),
      }),
    ),
    told: ["log.json"],
  },
  {
    name: "cut JSON",
    what: "a list of objects on many lines that stops in the middle",
    bytes: utf8(JSON.stringify(MOMENTS, null, 2).slice(0, 9000)),
    told: [],
    refused: { code: "log.no-numbers", where: "stand.csv" },
  },
  {
    name: "drop-outs",
    what: "one row in ten lost by the radio link, its cells empty but for the time",
    bytes: utf8(
      written({
        rows: ROWS.map((row, i) => ((i * 7919) % 10 === 3 ? row.map((cell, c) => (c === 0 ? cell : "")) : row)),
      }),
    ),
    told: ["log.empty-cell"],
  },
  {
    name: "ragged rows",
    what: "rows with cells missing at the end or too many",
    bytes: utf8(
      lines
        .map((line, i) =>
          i > 0 && i % 90 === 5 ? line.split(",").slice(0, 4).join(",") : i > 0 && i % 90 === 7 ? `${line},7` : line,
        )
        .join("\n"),
    ),
    told: ["log.short-row", "log.long-row"],
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
    name: "times twice",
    what: "a clock coarser than the rows",
    bytes: utf8(written({ rows: withCell(0, (_, { t }) => (Math.floor(t * 5) / 5).toFixed(1)) })),
    told: ["log.time-repeats"],
  },
  {
    name: "ms rollover",
    what: "a 32-bit counter of milliseconds runs over",
    bytes: utf8(rollover(2 ** 32, 1000, "time (ms)")),
    told: ["log.clock-rollover"],
  },
  {
    name: "us rollover",
    what: "a 32-bit counter of microseconds runs over",
    bytes: utf8(rollover(2 ** 32, 1e6, "time (us)")),
    told: ["log.clock-rollover"],
  },
  {
    name: "16-bit rollover",
    what: "a 16-bit counter of milliseconds runs over",
    bytes: utf8(rollover(2 ** 16, 1000, "time (ms)")),
    told: ["log.clock-rollover"],
  },
  { name: "ISO times", what: "dates and times over midnight", bytes: utf8(iso()), told: ["log.clock"] },
  {
    name: "thousands",
    what: "decimal commas and a rotation rate with thousands points",
    bytes: utf8(thousands()),
    reading: { thousands: "always" },
    told: ["log.thousands"],
  },
  {
    name: "semicolon and decimal comma",
    what: "semicolons between cells, commas in numbers",
    bytes: utf8(commas(written({ between: ";" }))),
    told: [],
  },
  { name: "tab", what: "tabs between cells", bytes: utf8(written({ between: "\t" })), told: [] },
  {
    name: "no header",
    what: "numbers from the first line on",
    bytes: utf8(lines.slice(1).join("\n")),
    stated: {
      "0": "time s",
      "1": "command us",
      "2": "thrust N",
      "3": "rotationRate rpm",
      "4": "voltage V",
      "5": "current A",
    },
    told: ["log.no-header"],
  },
  {
    name: "voltage and current swapped",
    what: "the names of voltage and current stand over each other's numbers",
    bytes: utf8(written({ header: [...HEADER.slice(0, 4), "current (A)", "voltage (V)"] })),
    told: ["bench.swapped-channels"],
  },
  {
    name: "load cell reversed",
    what: "thrust counts down",
    bytes: utf8(written({ rows: withCell(2, (_, { thrust }) => (-thrust).toFixed(3)) })),
    sign: -1,
    told: ["bench.negative-thrust"],
  },
  {
    name: "gram-force labelled newton",
    what: "a scale in grams under a header that says newton",
    bytes: utf8(written({ rows: withCell(2, (_, { thrust }) => (thrust / GRAM_FORCE).toFixed(0)) })),
    stated: { "2": "thrust g" },
    told: ["bench.reading-doubtful"],
  },
  {
    name: "electrical rpm unlabelled",
    what: "a speed column that counts electrical turns and does not say so",
    bytes: utf8(
      written({
        header: [...HEADER.slice(0, 3), "speed", ...HEADER.slice(4)],
        rows: withCell(3, (_, { rpm }) => (7 * rpm).toFixed(0)),
      }),
    ),
    stated: { "3": "rotationRate erpm" },
    polePairs: 7,
    told: ["bench.reading-doubtful"],
  },
  {
    name: "no rest",
    what: "no stretch at zero throttle",
    bytes: utf8(written({ rows: ROWS.filter((_, i) => Math.floor(i / PER_STEP) % 2 === 1) })),
    told: ["bench.no-tare"],
  },
  {
    name: "one plateau",
    what: "one speed only",
    bytes: utf8(plateauOnly),
    told: [],
    refused: { code: "bench.too-few-plateaus", where: "stand.csv" },
  },
  {
    name: "cut off",
    what: "the logger lost power in the middle of a line",
    bytes: utf8(written().slice(0, -17)),
    told: ["log.cut-line"],
  },
  {
    name: "padding",
    what: "zero bytes of memory that was never written at the end",
    bytes: utf8(`${written()}${"\0".repeat(512)}`),
    told: ["log.padding"],
  },
  {
    name: "comma twice",
    what: "a comma between cells and in numbers",
    bytes: utf8(commas(written({ rows: MOMENTS.map((moment) => cellsOf(moment)) }))),
    told: [],
    refused: { code: "log.comma-twice", where: "stand.csv, line 2" },
  },
  {
    name: "binary",
    what: "a file that is not text",
    bytes: Uint8Array.from({ length: 600 }, (_, i) => (i * 7919) % 256),
    told: [],
    refused: { code: "log.binary", where: "stand.csv" },
  },
  {
    name: "workbook",
    what: "a spreadsheet workbook instead of its text",
    bytes: Uint8Array.from([0x50, 0x4b, 0x03, 0x04, ...Array.from({ length: 60 }, (_, i) => i)]),
    told: [],
    refused: { code: "log.binary", where: "stand.csv" },
  },
  {
    name: "empty",
    what: "blank lines only",
    bytes: utf8("\n \n\n"),
    told: [],
    refused: { code: "log.empty", where: "stand.csv" },
  },
  {
    name: "no numbers",
    what: "the settings of a logger instead of its log",
    bytes: utf8("sensor: load cell\nrate: fast\nname: stand\n"),
    told: [],
    refused: { code: "log.no-numbers", where: "stand.csv" },
  },
  {
    name: "one column",
    what: "one number on each line",
    bytes: utf8("thrust\n1.2\n1.3\n1.4\n"),
    told: [],
    refused: { code: "log.one-column", where: "stand.csv" },
  },
  {
    name: "names in rows",
    what: "name and number in turn on every line, without marks",
    bytes: utf8(
      printed((cells, moment) => `Time ${cells[0]} PWM ${cells[1]} Thrust ${gramsOf(moment)} g RPM ${cells[3]}`),
    ),
    told: ["log.names-in-rows"],
  },
  {
    name: "names, numbers and units",
    what: "name, number and unit of each reading in words",
    bytes: utf8(
      `Tare...\nCalibrating\n${printed((cells, moment) => `Time: ${cells[0]} s Throttle: ${cells[1]}us Thrust: ${gramsOf(moment)} g RPM: ${cells[3]}`)}`,
    ),
    told: ["log.affix", "log.preamble"],
  },
  {
    name: "an object a line",
    what: "each line an object with names, nested, with a time of day",
    bytes: utf8(
      printed((cells, { t }) =>
        JSON.stringify({
          time: new Date(Date.UTC(2026, 10, 25, 12, 0, 0) + t * 1000).toISOString(),
          cell: { thrust_N: Number(cells[2]) },
          esc: { rpm: Number(cells[3]), volts: Number(cells[4]) },
        }),
      ),
    ),
    told: ["log.affix", "log.clock"],
  },
  {
    name: "cells in any order",
    what: "named cells that change places and are left out at times",
    bytes: utf8(
      printed(([t, , thrust, rpm, volts], _, row) => {
        const cells = [`thrust_N:${thrust}`, `rpm:${rpm}`, ...(row % 9 === 5 ? [] : [`volts:${volts}`])];
        return `t:${t} ${(row % 2 ? cells : cells.reverse()).join(" ")}`;
      }),
    ),
    told: ["log.cells-by-name"],
  },
  {
    name: "two paces",
    what: "thrust and rotation rate never on the same row, the other cells empty",
    bytes: utf8(
      written({
        rows: ROWS.map((row, i) => (i % 3 === 0 ? row.toSpliced(2, 1, "") : row.toSpliced(3, 3, "", "", ""))),
      }),
    ),
    told: ["log.interleaved-rows"],
  },
  {
    name: "minutes and seconds",
    what: "times like 1:05",
    bytes: utf8(written({ rows: withCell(0, (_, { t }) => minutes(t)) })),
    told: ["log.clock", "log.time-repeats"],
  },
  {
    name: "hours and minutes",
    what: "a page of a notebook with times like 14:05",
    bytes: utf8(`time,thrust (N),speed (rpm)\n${notebook()}\n`),
    told: ["log.hours-and-minutes", "bench.single-readings"],
  },
  {
    name: "days of a spreadsheet",
    what: "times as the days by which a spreadsheet counts",
    bytes: utf8(
      written({
        header: ["Date", ...HEADER.slice(1)],
        rows: withCell(0, (_, { t }) => (46_351.5 + t / 86_400).toFixed(9)),
      }),
    ),
    told: [],
  },
  {
    name: "apostrophes",
    what: "an apostrophe between thousands",
    bytes: utf8(written({ rows: withCell(3, (old) => swiss(old)), between: ";" })),
    told: ["log.thousands"],
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
    name: "dashes",
    what: "dashes and the words of foreign spreadsheets where a number is missing",
    bytes: utf8(
      written({ rows: withCell(2, (old, _, row) => (row % 37 === 3 ? ["—", "–", "#NV", "n.d."][row % 4]! : old)) }),
    ),
    told: ["log.missing-cell"],
  },
  {
    name: "time in brackets",
    what: "milliseconds in brackets before named readings",
    bytes: utf8(printed(([, , thrust, rpm], { t }) => `[${(1000 * t).toFixed(0)}] thrust=${thrust}N rpm=${rpm}`)),
    told: ["log.affix"],
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
  {
    name: "big-endian",
    what: "UTF-16 with the high byte first and no mark",
    bytes: new Uint8Array(Buffer.from(written({ between: "\t" }), "utf16le").swap16()),
    told: [],
  },
  {
    name: "lying table",
    what: "channels in rows instead of columns",
    bytes: utf8(
      `time (s),${ROWS.slice(0, 9).map(([t]) => t)}\nthrust (N),${ROWS.slice(90, 99).map((row) => row[2])}\nrpm,${ROWS.slice(90, 99).map((row) => row[3])}\n`,
    ),
    told: [],
    refused: { code: "log.rows-are-channels", where: "stand.csv, line 1" },
  },
  {
    name: "level and tag",
    what: "a level letter, milliseconds in brackets and a tag before each line",
    bytes: utf8(printed(([, , thrust, rpm], { t }) => `I (${1000 * t}) stand: thrust=${thrust}N, rpm=${rpm}`)),
    told: ["log.affix"],
  },
  {
    name: "stamped",
    what: "colours and the time of arrival in brackets before each line",
    bytes: utf8(
      printed(([, , thrust, rpm], { t }) => {
        const time = new Date(Date.UTC(2026, 10, 25, 12, 0, 0) + t * 1000).toISOString().slice(0, -1);
        return `\u001b[32m[${time.replace("T", " ")}] thrust: ${thrust} N rpm: ${rpm}\u001b[0m`;
      }),
    ),
    told: ["log.affix", "log.clock"],
  },
  {
    name: "instruments in turn",
    what: "a tag, a time and a reading a line, of one instrument and then the other",
    bytes: utf8(printed(([t, , thrust, rpm], _, row) => (row % 2 ? `SCALE,${t},${thrust}` : `ESC,${t},${rpm}`))),
    told: [],
    refused: { code: "log.rows-of-instruments", where: "stand.csv, line 1" },
  },
  {
    name: "a line for each reading",
    what: "named readings of one moment on lines of their own",
    bytes: utf8(printed(([t, , thrust, rpm]) => `Time: ${t}\nThrust: ${thrust} N\nRPM: ${rpm}\n---`)),
    told: [],
    refused: { code: "log.one-column", where: "stand.csv" },
  },
  {
    name: "two logs apart",
    what: "thrust and rotation rate in one log, voltage and current in another with a clock 412.3 s ahead",
    bytes: utf8(
      written({ header: [HEADER[0]!, ...HEADER.slice(2, 4)], rows: ROWS.map((row) => [row[0]!, row[2]!, row[3]!]) }),
    ),
    companion: utf8(
      `clock (s),voltage (V),current (A)\n${MOMENTS.map(({ t, volts, amps }) => `${(t + 412.3).toFixed(1)},${volts.toFixed(3)},${amps.toFixed(3)}`).join("\n")}\n`,
    ),
    told: ["bench.logs-aligned"],
  },
];

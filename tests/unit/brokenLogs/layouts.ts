import { type BrokenLog, cellsOf, HEADER, half, lines, MOMENTS, ROWS, utf8, written } from "./inventedRun.ts";

function restarted(): string {
  const end = MOMENTS[half]!.t;
  const rows = MOMENTS.map((moment) => cellsOf(moment.t < end ? moment : { ...moment, t: moment.t - end }));
  const at = MOMENTS.findIndex(({ t }) => t >= end);
  return [HEADER, ...rows.slice(0, at), HEADER, ...rows.slice(at)].map((row) => row.join(",")).join("\n");
}

/** Where header, units and rows can stand in a file. */
export const LAYOUTS: readonly BrokenLog[] = [
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
  { name: "tab", what: "tabs between cells", bytes: utf8(written({ between: "\t" })), told: [] },
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
    name: "lying table",
    what: "channels in rows instead of columns",
    bytes: utf8(
      `time (s),${ROWS.slice(0, 9).map(([t]) => t)}\nthrust (N),${ROWS.slice(90, 99).map((row) => row[2])}\nrpm,${ROWS.slice(90, 99).map((row) => row[3])}\n`,
    ),
    told: [],
    refused: { code: "log.rows-are-channels", where: "stand.csv, line 1" },
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
];

import { type BrokenLog, gramsOf, MOMENTS, type Moment, ROWS, utf8 } from "./inventedRun.ts";

/** The readings of one moment as a printing sketch words them. */
const printed = (line: (cells: readonly string[], moment: Moment, row: number) => string) =>
  `${MOMENTS.map((moment, row) => line(ROWS[row]!, moment, row)).join("\n")}\n`;

/** Lines as a sketch on a microcontroller prints them. */
export const PRINTED_LINES: readonly BrokenLog[] = [
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
    name: "time in brackets",
    what: "milliseconds in brackets before named readings",
    bytes: utf8(printed(([, , thrust, rpm], { t }) => `[${(1000 * t).toFixed(0)}] thrust=${thrust}N rpm=${rpm}`)),
    told: ["log.affix"],
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
];

import { type BrokenLog, cellsOf, HEADER, MOMENTS, utf8, withCell, written } from "./inventedRun.ts";

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

const minutes = (t: number) =>
  `${Math.floor(t / 60)}:${Math.floor(t % 60)
    .toString()
    .padStart(2, "0")}`;

/** Four readings of each step and of the rests, as a page of a notebook. */
const notebook = () =>
  MOMENTS.filter((_, i) => i % 20 === 19)
    .map((moment, i) => [`14:${(5 + i).toString().padStart(2, "0")}`, ...cellsOf(moment).slice(2, 4)].join(","))
    .join("\n");

/** How a logger can write the time. */
export const CLOCKS: readonly BrokenLog[] = [
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
];

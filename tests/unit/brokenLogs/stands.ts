import { type BrokenLog, GRAM_FORCE, HEADER, MOMENTS, PER_STEP, ROWS, utf8, withCell, written } from "./inventedRun.ts";

const plateauOnly = written({ rows: ROWS.filter((_, i) => Math.floor(i / PER_STEP) % 8 === 7 || i < PER_STEP) });

/** What can be wrong with the stand, or with what a person says of its channels. */
export const STANDS: readonly BrokenLog[] = [
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

import { STANDARD_GRAVITY } from "../../shared/quantity/constants.ts";
import { fixed } from "./glitches.ts";
import type { Reading } from "./instruments.ts";

/** How one home-made logger writes a row of readings: text cells, header lines and line ends. */
export interface LogFormat {
  readonly delimiter: string;
  readonly lineEnd: string;
  readonly byteOrderMark: boolean;
  readonly comments: readonly string[];
  /** Header, and the units where they have a line of their own. */
  readonly header: readonly (readonly string[])[];
  readonly cells: (reading: Reading) => string[];
}

/** Weight of a gram at standard gravity, N. */
export const GRAM_FORCE = STANDARD_GRAVITY * 1e-3;
/** Magnet pole pairs of both motors: electrical turns for one turn of the shaft. */
const POLE_PAIRS = 7;

const NOTICE = "invented demonstration data: nobody measured this";

/** Reversing controllers rest at 1500 µs and run full ahead at 1900 µs. */
const pulse = (asked: number) => fixed(1500 + 400 * asked, 0);
const atLeastZero = (value: number) => Math.max(0, value);

/** Commas, seconds, microseconds, gram-force. */
export const commaFormat = (comment: string): LogFormat => ({
  delimiter: ",",
  lineEnd: "\n",
  byteOrderMark: false,
  comments: [`# ${NOTICE}`, `# ${comment}`],
  header: [["time [s]", "throttle [us]", "thrust [gf]", "speed [rpm]", "supply [V]", "supply [A]"]],
  cells: (r) => [
    fixed(r.time, 3),
    pulse(r.asked),
    fixed(r.force / GRAM_FORCE, 1),
    fixed(r.rotationRate * 60, 0),
    fixed(r.voltage, 2),
    fixed(atLeastZero(r.current), 2),
  ],
});

/** The same logger without load cell: nothing is on the shaft. */
export const motorFormat = (comment: string): LogFormat => ({
  delimiter: ",",
  lineEnd: "\n",
  byteOrderMark: false,
  comments: [`# ${NOTICE}`, `# ${comment}`],
  header: [["time [s]", "throttle [us]", "speed [rpm]", "supply [V]", "supply [A]"]],
  cells: (r) => [
    fixed(r.time, 3),
    pulse(r.asked),
    fixed(r.rotationRate * 60, 0),
    fixed(r.voltage, 2),
    fixed(r.current, 2),
  ],
});

/** Semicolons, decimal commas, milliseconds, electrical turns, a units row; as a spreadsheet exports it. */
export const semicolonFormat = (comment: string): LogFormat => ({
  delimiter: ";",
  lineEnd: "\r\n",
  byteOrderMark: true,
  comments: [`# ${NOTICE}`, `# ${comment}`],
  header: [
    ["clock", "servo pulse", "thrust", "electrical speed", "bus voltage", "bus current"],
    ["ms", "us", "N", "erpm", "V", "A"],
  ],
  cells: (r) =>
    [
      fixed(r.time * 1000, 0),
      pulse(r.asked),
      fixed(r.force, 2),
      fixed(Math.round(r.rotationRate * 6 * POLE_PAIRS) * 10, 0),
      fixed(r.voltage, 2),
      fixed(atLeastZero(r.current), 1),
    ].map((cell) => cell.replace(".", ",")),
});

/** Tabs, percent, newton and newton-millimetre. */
export const tabFormat = (comment: string): LogFormat => ({
  delimiter: "\t",
  lineEnd: "\n",
  byteOrderMark: false,
  comments: [
    `# ${NOTICE}`,
    `# ${comment}`,
    "# Force and reaction torque on flexures; both were set to zero in the morning.",
    "# Throttle in percent of full ahead.",
  ],
  header: [["elapsed (s)", "throttle (%)", "force (N)", "torque (N·mm)", "shaft (rpm)", "supply (V)", "supply (A)"]],
  cells: (r) => [
    fixed(r.time, 2),
    fixed(100 * r.asked, 0),
    fixed(r.force, 2),
    fixed(1000 * r.torque, 1),
    fixed(r.rotationRate * 60, 1),
    fixed(r.voltage, 2),
    fixed(atLeastZero(r.current), 2),
  ],
});

/** Commas, percent, newton, newton-millimetre, and the carriage in metres per second. */
export const towFormat = (comment: string): LogFormat => ({
  delimiter: ",",
  lineEnd: "\n",
  byteOrderMark: false,
  comments: [`# ${NOTICE}`, `# ${comment}`, "# One throttle, the carriage from speed to speed."],
  header: [["time (s)", "throttle (%)", "force (N)", "torque (N·mm)", "shaft (rpm)", "carriage (m/s)"]],
  cells: (r) => [
    fixed(r.time, 2),
    fixed(100 * r.asked, 0),
    fixed(r.force, 2),
    fixed(1000 * r.torque, 1),
    fixed(r.rotationRate * 60, 1),
    fixed(r.speed, 3),
  ],
});

/** The lines that a logger prints when it starts. */
export const opening = (format: LogFormat): string[] => [
  ...format.comments,
  ...format.header.map((cells) => cells.join(format.delimiter)),
];

/** The whole text of a log from its lines. */
export const logText = (format: LogFormat, lines: readonly string[]): string =>
  `${format.byteOrderMark ? "\ufeff" : ""}${lines.join(format.lineEnd)}${format.lineEnd}`;

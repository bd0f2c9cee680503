import type { Option } from "./options.ts";
import { READING_OPTION } from "./readingOption.ts";
import { CALIBRATION_OPTIONS } from "./thrustInstrument.ts";

/** Options of every verb that reads logs. */
export const LOG_OPTIONS = {
  diameter: { value: "QUANTITY", text: "propeller diameter; ± its standard uncertainty if known" },
  water: { value: "FLUID", text: 'what it turned in, e.g. "fresh 18C", "sea 12C 33", "air 20C 1013hPa 50%"' },
  column: {
    value: 'ROLE="HEADER"',
    text: "what a column stands for, where the guess is wrong; #3 is the third column",
    many: true,
  },
  unit: { value: "ROLE=UNIT", text: "unit of a column, where the header does not say it, e.g. thrust=gf", many: true },
  ...READING_OPTION,
  factor: {
    value: "ROLE=NUMBER",
    text: "multiplier of a channel: lever ratio, calibration; negative turns the sign",
    many: true,
  },
  "calibration-uncertainty": {
    value: "FRACTION",
    text: "relative standard uncertainty of the thrust calibration, with its per cent sign, e.g. 0.5%",
  },
  "meter-uncertainty": {
    value: "ROLE=FRACTION",
    text: "relative standard uncertainty of another meter, e.g. current=2%; also voltage, electricalPower, torque, rotationRate",
    many: true,
  },
  ...CALIBRATION_OPTIONS,
  "pole-pairs": { value: "COUNT", text: "magnet pole pairs, where the log counts electrical turns" },
  "advance-speed": {
    value: "QUANTITY",
    text: "speed through the water during the whole run, where no column has it; ± its standard uncertainty",
  },
  order: {
    value: "NUMBER",
    text: "order of the curves against the advance ratio, 1 to 4; chosen by the points where absent",
  },
  sweep: { text: "the log is a slow ramp without held steps: regression on the whole trace" },
  "no-tare": { text: "take the zero of the thrust as it stands in the log" },
  immersion: { value: "QUANTITY", text: "depth of the shaft under the surface, for the checks of the run" },
  nozzle: { text: "the propeller ran in a nozzle" },
  kv: { value: "QUANTITY", text: "motor speed constant: with the next two gives shaft power without a torque cell" },
  resistance: { value: "QUANTITY", text: "motor winding resistance" },
  "no-load-current": { value: "QUANTITY", text: "motor no-load current" },
  "controller-resistance": { value: "QUANTITY", text: "controller resistance" },
  json: { text: "print the whole result as JSON, SI units" },
} as const satisfies Record<string, Option>;

/** Options of the verb that reads one log. */
export const ELECTRICAL_LOG_OPTIONS = {
  "electrical-log": { value: "LOG", text: "log of voltage and current of the same run, on a clock of its own" },
  lag: {
    value: "QUANTITY",
    text: "added to the clock of the electrical log, e.g. --lag=-2.5s; found from both logs where absent",
  },
} as const satisfies Record<string, Option>;

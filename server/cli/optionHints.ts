import type { Warning } from "../../shared/quantity/warning.ts";

/** The option or verb that states or does what a warning asks for. */
const HINTS: Readonly<Record<string, string>> = {
  "bench.fluid-assumed": 'The option is --water, e.g. --water "fresh 18C".',
  "bench.motor-constants": "The verb identify does that.",
  "bench.meters-exact": "The option is --meter-uncertainty, e.g. --meter-uncertainty current=2%.",
  "bench.no-calibration":
    "The option is --calibration-uncertainty, e.g. --calibration-uncertainty 1%, or --calibration with a table of weights.",
};

/** A warning as a line of text, with the option that settles it. */
export function noteLine({ code, message }: Pick<Warning, "code" | "message">): string {
  const hint = HINTS[code];
  return `Note: ${message}${hint === undefined ? "" : ` ${hint}`}`;
}

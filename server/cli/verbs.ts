import type { Usage, Words } from "./options.ts";

/** What the command line can do. Each verb is loaded when it is asked for, so that --help answers at once. */
interface Verb {
  readonly summary: string;
  readonly load: () => Promise<LoadedVerb>;
}

export interface LoadedVerb {
  readonly USAGE: Usage;
  /** Does the work and returns the exit code; `args` is what `words` was taken from. */
  readonly run: (words: Words, args: readonly string[]) => number | Promise<number>;
}

export const VERBS = {
  reduce: {
    summary: "a thrust-stand log -> thrust and power coefficients with uncertainty",
    load: () => import("./reduce.ts"),
  },
  compare: {
    summary: "two or more logs -> the ratio of their thrust coefficients with its interval",
    load: () => import("./compare.ts"),
  },
  plan: {
    summary: "spread between mountings and a difference -> how many mountings show it, and a run sheet",
    load: () => import("./plan.ts"),
  },
  predict: {
    summary: "power or thrust, diameter and static merit -> what momentum theory allows and what to expect",
    load: () => import("./predict.ts"),
  },
  drive: {
    summary: "motor, supply and propeller -> speed, thrust, currents and efficiency at a throttle",
    load: () => import("./drive.ts"),
  },
  shortlist: {
    summary: "a requirement and a parts box -> the combinations that meet it, ranked, and why the others fail",
    load: () => import("./shortlist.ts"),
  },
  vehicle: {
    summary: "a whole vehicle -> speeds, headings, climbing, stopping, endurance, and whether it meets what is asked",
    load: () => import("./vehicle.ts"),
  },
  identify: {
    summary: "logs of a motor, with and without propeller -> its constants with uncertainty",
    load: () => import("./identify.ts"),
  },
  record: {
    summary: "lines from a stand, as they come -> a run in the workbench that runs",
    load: () => import("./record.ts"),
  },
  bundle: {
    summary: "a project of the workbench that runs -> one file, and back",
    load: () => import("./bundle.ts"),
  },
  serve: { summary: "start the workbench for the browser", load: () => import("./serve.ts") },
} as const satisfies Record<string, Verb>;

export type VerbName = keyof typeof VERBS;

const width = Math.max(...Object.keys(VERBS).map((name) => name.length));

export const OVERVIEW = `Usage: npm run --silent cli -- VERB [arguments]

${Object.entries(VERBS)
  .map(([name, { summary }]) => `  ${name.padEnd(width)}  ${summary}`)
  .join("\n")}

VERB --help tells the arguments of one. Quantities are written with their unit: --diameter 76mm --water "fresh 18C".
Exit code 0: done. 1: a stated requirement is not met. 2: the input can not be used; standard error says why.
`;

import { InputProblem, OutOfDomain } from "../../shared/quantity/problem.ts";
import { type LoadedVerb, OVERVIEW, VERBS, type VerbName } from "./verbs.ts";

/**
 * Does what the words of a command line ask for, writing to standard output; what can not be done is told on standard
 * error. Exit codes: 0 good, 1 the result does not meet a stated requirement, 2 the input can not be used.
 */
export async function commandLine(words: readonly string[]): Promise<number> {
  try {
    return await done(words);
  } catch (error) {
    const known = error instanceof InputProblem || error instanceof OutOfDomain;
    process.stderr.write(`${known ? error.message : unexpected(error)}\n`);
    return 2;
  }
}

async function done(words: readonly string[]): Promise<number> {
  const [verb, ...rest] = words;
  if (verb === undefined || verb === "--help" || verb === "help") {
    process.stdout.write(OVERVIEW);
    return verb === undefined ? 2 : 0;
  }
  if (verb === "--version") {
    process.stdout.write(`${process.env["BOLLARD_VERSION"] ?? "development"}\n`);
    return 0;
  }
  if (!Object.hasOwn(VERBS, verb)) {
    throw new InputProblem({
      code: "cli.unknown-verb",
      where: "command line",
      found: `"${verb}" is not something this program does`,
      needed: Object.keys(VERBS).join(", "),
      mend: "Write --help for what each does",
    });
  }
  const { USAGE, run }: LoadedVerb = await VERBS[verb as VerbName].load();
  const { helpText, Words } = await import("./options.ts");
  const asked = new Words(USAGE, rest);
  if (!asked.has("help")) return run(asked, rest);
  process.stdout.write(helpText(USAGE));
  return 0;
}

function unexpected(error: unknown): string {
  return `Something went wrong inside the program; this is a fault of ours: ${error instanceof Error ? error.stack : error}`;
}

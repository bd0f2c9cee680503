import { vi } from "vitest";
import { Words } from "../../server/cli/options.ts";
import { type LoadedVerb, VERBS, type VerbName } from "../../server/cli/verbs.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { CliResult } from "./runCli.ts";

/**
 * A verb of the command line in this process: what it writes and returns, without the start of a process for every
 * sentence. That the command line starts, and what it makes of a problem, is for the tests that use runCli.
 */
export async function runVerb(verb: VerbName, ...args: readonly string[]): Promise<CliResult> {
  const { USAGE, run }: LoadedVerb = await VERBS[verb].load();
  let stdout = "";
  const shown = vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    stdout += text;
    return true;
  });
  try {
    return { code: await run(new Words(USAGE, args), args), stdout, stderr: "" };
  } catch (thrown) {
    if (!(thrown instanceof InputProblem)) throw thrown;
    return { code: 2, stdout, stderr: thrown.message };
  } finally {
    shown.mockRestore();
  }
}

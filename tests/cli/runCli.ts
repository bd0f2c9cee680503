import { vi } from "vitest";
import { commandLine } from "../../server/cli/commandLine.ts";

export interface CliResult {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/**
 * What the command line writes and returns for these words, without the start of a process for every sentence. That it
 * starts as a program is for the tests that use `startedCli`.
 */
export async function runCli(...words: readonly string[]): Promise<CliResult> {
  const said = { stdout: "", stderr: "" };
  const shown = (["stdout", "stderr"] as const).map((stream) =>
    vi.spyOn(process[stream], "write").mockImplementation((text) => {
      said[stream] += text;
      return true;
    }),
  );
  try {
    return { code: await commandLine(words), ...said };
  } finally {
    for (const one of shown) one.mockRestore();
  }
}

import { spawn } from "node:child_process";
import { resolve } from "node:path";
import type { CliResult } from "./runCli.ts";

const ROOT = resolve(import.meta.dirname, "../..");

/** Starts the command line as a program, as `npm run --silent cli -- ...` does, and waits for its end. */
export function startedCli(...words: readonly string[]): Promise<CliResult> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, ["server/launch.mjs", "cli", ...words], { cwd: ROOT });
    let stdout = "";
    let stderr = "";
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text: string) => {
      stderr += text;
    });
    child.on("error", fail);
    child.on("close", (code) => done({ code: code ?? -1, stdout, stderr }));
  });
}

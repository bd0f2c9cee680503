import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { onTestFinished } from "vitest";

const MAIN = fileURLToPath(new URL("../../.build/server/main.js", import.meta.url));

interface Ended {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Started {
  readonly child: ChildProcess;
  /** The first word on stdout, or the end if it comes before. */
  readonly spoke: Promise<void>;
  readonly ended: Promise<Ended>;
  /** The address that was printed; empty before that. */
  address(): string;
}

/** A workbench in a process of its own; it is gone when the test is over. */
export function startedProcess(args: readonly string[], options: { uid?: number } = {}): Started {
  const child = spawn(process.execPath, [MAIN, ...args], {
    ...options,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let stdout = "";
  let stderr = "";
  const spoke = new Promise<void>((resolve) => {
    child.stdout.on("data", (chunk) => {
      stdout += chunk;
      if (stdout.includes("Ctrl+C")) resolve();
    });
    child.once("close", () => resolve());
  });
  child.stderr.on("data", (chunk) => {
    stderr += chunk;
  });
  const ended = new Promise<Ended>((resolve) => child.once("close", (code) => resolve({ code, stdout, stderr })));
  onTestFinished(async () => {
    child.kill("SIGKILL");
    await ended;
  });
  return { child, spoke, ended, address: () => /http:\S+/.exec(stdout)?.[0] ?? "" };
}

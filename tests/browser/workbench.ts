import { type ChildProcess, spawn } from "node:child_process";
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { type Browser, chromium, type LaunchOptions } from "playwright-core";
import { findChromium } from "./chromiumPath.mjs";

const ROOT = resolve(import.meta.dirname, "../..");

export interface Workbench {
  readonly address: string;
  readonly pid: number;
  stop(): Promise<void>;
}

export interface Start {
  readonly flags?: readonly string[];
  /** Folder that its data begin as; absent: empty. */
  readonly dataFrom?: string | undefined;
  /** Folder of its data, which stays; absent: one of its own, gone when it stops. */
  readonly dataIn?: string;
}

/** Starts the built workbench as `npm start` does, on a free port. */
export async function startWorkbench({ flags = [], dataFrom, dataIn }: Start = {}): Promise<Workbench> {
  const data = dataIn ?? mkdtempSync(join(tmpdir(), "bollard-page-"));
  if (dataFrom !== undefined) cpSync(dataFrom, data, { recursive: true });
  const child = spawn(process.execPath, ["server/launch.mjs", "workbench", "--port", "0", "--data", data, ...flags], {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const address = await printedAddress(child);
  return {
    address,
    pid: child.pid!,
    async stop() {
      const gone = new Promise((done) => child.once("close", done));
      child.kill("SIGTERM");
      await gone;
      if (dataIn === undefined) rmSync(data, { recursive: true, force: true });
    },
  };
}

function printedAddress(child: ChildProcess): Promise<string> {
  return new Promise((done, fail) => {
    let printed = "";
    const look = (text: Buffer) => {
      printed += text.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(printed)?.[0];
      if (address) done(address);
    };
    child.stdout!.on("data", look);
    child.stderr!.on("data", look);
    child.once("exit", (code) => fail(new Error(`the workbench stopped with ${code}: ${printed}`)));
  });
}

/** Headless Chromium; as root it needs --no-sandbox, and without the rest it asks the network for things. */
export const HEADLESS: LaunchOptions = {
  executablePath: findChromium()!,
  args: [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};

export function launchBrowser(): Promise<Browser> {
  return chromium.launch(HEADLESS);
}

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";
import { reduceAll } from "./reduceAll.ts";
import { startWorkbench } from "./workbench.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** Folder with the data of a workbench that has read the demonstration. */
    readonly demoData: string;
  }
}

/** The demonstration, read once for all files; each begins with a copy. */
export default async function prepareDemo({ provide }: TestProject): Promise<() => void> {
  const data = mkdtempSync(join(tmpdir(), "bollard-demo-"));
  const workbench = await startWorkbench({ dataIn: data });
  await reduceAll(workbench.address);
  await workbench.stop();
  provide("demoData", data);
  return () => rmSync(data, { recursive: true, force: true });
}

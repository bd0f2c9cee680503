import { chromium } from "playwright-core";
import type { TestProject } from "vitest/node";
import { HEADLESS } from "./workbench.ts";

declare module "vitest" {
  export interface ProvidedContext {
    /** Where the Chromium of all browser tests listens. */
    readonly chromium: string;
  }
}

/** One Chromium for all files; each has windows, storage and cache of its own in it. */
export default async function startChromium({ provide }: TestProject): Promise<() => Promise<void>> {
  const server = await chromium.launchServer(HEADLESS);
  provide("chromium", server.wsEndpoint());
  return () => server.close();
}

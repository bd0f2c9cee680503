import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, onTestFinished } from "vitest";
import { launchBrowser, startWorkbench, type Workbench } from "./workbench.ts";

export interface OpenPage {
  readonly page: Page;
  /** Whatever the page reports as wrong while it is open. */
  readonly complaints: readonly string[];
}

export interface ServedPages {
  readonly address: () => string;
  /** A screen in a window of its own, closed when the test ends. */
  readonly open: (screen: string, options?: BrowserContextOptions) => Promise<OpenPage>;
  /** The same, for the tests of a whole file: open until they are over. */
  readonly keep: (screen: string, options?: BrowserContextOptions) => Promise<OpenPage>;
}

/** A started workbench and a browser for the tests of one file; both are gone after them. */
export function servedPages(...flags: readonly string[]): ServedPages {
  let workbench: Workbench;
  let browser: Browser;
  beforeAll(async () => {
    workbench = await startWorkbench(...flags);
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await workbench.stop();
  });
  const keep = async (screen: string, options: BrowserContextOptions = {}) => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, ...options });
    page.setDefaultTimeout(20_000);
    page.setDefaultNavigationTimeout(60_000);
    const complaints: string[] = [];
    page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
    page.on("pageerror", (error) => complaints.push(error.message));
    await page.goto(`${workbench.address}/#/${screen}`);
    await page.waitForLoadState("networkidle");
    return { page, complaints };
  };
  return {
    address: () => workbench.address,
    keep,
    async open(screen, options) {
      const opened = await keep(screen, options);
      onTestFinished(() => opened.page.close());
      return opened;
    },
  };
}

/** Chromium writes a line for every answer that is a refusal, which a test may be about. */
export const isNoRefusal = (complaint: string) => !complaint.startsWith("Failed to load resource");

/** Chooses files by the button that opens the file chooser. */
export async function chooseFiles(page: Page, files: Parameters<Page["setInputFiles"]>[1], which = 0): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Choose files" }).nth(which).click();
  await (await chooser).setFiles(files);
}

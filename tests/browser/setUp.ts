import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, inject, onTestFinished, vi } from "vitest";
import type {} from "./preparedDemo.ts";
import { reduceAll } from "./reduceAll.ts";
import type {} from "./sharedChromium.ts";
import { startWorkbench, type Workbench } from "./workbench.ts";

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

/** The Chromium of all files. Closing what this gives closes the windows that were opened by it, and no others. */
export function connectBrowser(): Promise<Browser> {
  return chromium.connect(inject("chromium"));
}

/** A started workbench and a browser for the tests of one file; both are gone after them. */
export function servedPages(...flags: readonly string[]): ServedPages {
  let workbench: Workbench;
  let browser: Browser;
  beforeAll(async () => {
    const dataFrom = flags.length === 0 ? inject("demoData") : undefined;
    workbench = await startWorkbench({ flags, dataFrom });
    await reduceAll(workbench.address);
    browser = await connectBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await workbench.stop();
  });
  const keep = async (screen: string, options: BrowserContextOptions = {}) => {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, ...options });
    page.setDefaultTimeout(40_000);
    page.setDefaultNavigationTimeout(60_000);
    const complaints: string[] = [];
    page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
    page.on("pageerror", (error) => complaints.push(error.message));
    await page.goto(`${workbench.address}/#/${screen}`);
    await answered(page);
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

/** Each screen with the question that heads it. */
export const QUESTIONS = [
  { name: "overview", question: /What is measured/ },
  { name: "parts", question: /What can a thruster be built from/ },
  { name: "bench", question: /What does this log say/ },
  { name: "variants", question: /How much did/ },
  { name: "theory", question: /How close to the ideal/ },
  { name: "drive", question: /What will it pull in the water/ },
  { name: "report", question: /What goes on paper/ },
] as const;

/** Goes to another screen as a link does: in a sixth of the time that a new window takes. */
export async function visit(page: Page, screen: string, question: RegExp): Promise<void> {
  await page.evaluate((to) => {
    location.hash = `#/${to}`;
  }, screen);
  await page.getByRole("heading", { level: 1, name: question }).waitFor();
  await answered(page);
}

/** Shows a run of the demonstration on the bench that is open, reduced. */
export async function showRun(page: Page, run: RegExp): Promise<void> {
  const choice = page.getByRole("button", { name: run });
  await choice.click();
  await page.locator(".bench-run[aria-current=true]").and(choice).waitFor();
  await page.locator("#bench-coefficients").waitFor();
  await answered(page);
}

/** A screen asks for many runs at once, which takes its time where several such tests share two cores. */
const OPENING = { timeout: 45_000 };

/** Waits until nothing that the answer of the screen rests on is still being worked out, and its pictures are drawn. */
export async function answered(page: Page): Promise<void> {
  await page.locator("main:not(:has(.chart-wait)) .screen > .answer:not([aria-busy=true])").waitFor(OPENING);
}

/** Opens every section of the screen, and what folds inside them, until nothing is left to open. */
export async function unfoldAll(page: Page, sections = "details"): Promise<void> {
  const closed = () =>
    page.evaluate((which) => {
      // What is inside a section may be made only after it was opened.
      const unmade = document.querySelectorAll("main details.fold[open]:not(:has(> .fold-body)):not(.bench-columns)");
      const folded = document.querySelectorAll<HTMLDetailsElement>(`main ${which}:not([open])`);
      for (const one of folded) one.open = true;
      return folded.length + unmade.length;
    }, sections);
  // Unlike expect.poll this can be called before the tests of a file as well.
  await vi.waitUntil(async () => (await closed()) === 0, { timeout: 20_000 });
  await answered(page);
}

/** Chromium writes a line for every answer that is a refusal, which a test may be about. */
export const isNoRefusal = (complaint: string) => !complaint.startsWith("Failed to load resource");

/** Chooses files by the button that opens the file chooser. */
export async function chooseFiles(page: Page, files: Parameters<Page["setInputFiles"]>[1], which = 0): Promise<void> {
  const button = page.getByRole("button", { name: "Choose files" }).nth(which);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), button.click()]);
  await chooser.setFiles(files);
}

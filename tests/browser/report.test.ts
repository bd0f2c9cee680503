import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, expect, onTestFinished, test } from "vitest";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { connectBrowser, type OpenPage, servedPages } from "./setUp.ts";

const { keep } = servedPages();

let report: OpenPage;

/** One page for all tests: a report is the longest page there is, and two of them at once only wait for each other. */
beforeAll(async () => {
  report = await keep("report");
  const { page } = report;
  await page.locator(".report-picture img").nth(2).waitFor({ timeout: 90_000 });
  await page.locator(".report-sheet:not(:has(.report-wait))").waitFor({ timeout: 90_000 });
});

async function saved(page: Page, act: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), act()]);
  const path = join(temporaryFolder(), download.suggestedFilename());
  await download.saveAs(path);
  return path;
}

test("the report of the demonstration says what it is, and a section can be left out", async () => {
  const { page, complaints } = report;
  const sheet = page.locator(".report-sheet");
  const words = await sheet.innerText();
  expect(words).toContain("Nobody measured these numbers");
  expect(words).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
  const title = sheet.getByRole("heading", { name: /Checks and warnings of the runs/ });
  await expect.poll(() => title.count()).toBe(1);
  await page.getByLabel("Checks and warnings of the runs").uncheck();
  await expect.poll(() => title.count()).toBe(0);
  await page.getByLabel("Checks and warnings of the runs").check();
  expect(complaints).toEqual([]);
});

test("on paper the sheet stands alone, and no table is wider than the page", async () => {
  const { page } = report;
  // The width between the margins of an A4 page, in CSS pixels: 210 mm less two times 10 mm at 96 to the inch.
  await page.setViewportSize({ width: 718, height: 1000 });
  await page.emulateMedia({ media: "print" });
  for (const hidden of [".rail", ".bar", ".screen-head", ".report-choice"]) {
    expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
  }
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(718);
  expect((await page.pdf({ format: "A4" })).subarray(0, 5).toString()).toBe("%PDF-");
  await page.emulateMedia({ media: "screen" });
  await page.setViewportSize({ width: 1440, height: 900 });
});

test("the report is saved as one page that opens from the disk and asks for nothing", async () => {
  const { page } = report;
  const path = await saved(page, () => page.getByRole("button", { name: "Save the report as one page" }).click());
  const text = readFileSync(path, "utf8");
  expect(text).not.toMatch(/<script|<link|<iframe|\son\w+=/);
  const asked: string[] = [];
  const complaints: string[] = [];
  const browser = await connectBrowser();
  onTestFinished(() => browser.close());
  const alone = await browser.newPage();
  alone.on("request", (request) => asked.push(request.url()));
  alone.on("console", (message) => complaints.push(message.text()));
  await alone.goto(`file://${path}`);
  const images = alone.locator("img");
  expect(await images.count()).toBeGreaterThan(2);
  expect(await images.evaluateAll((all) => all.every((one) => (one as HTMLImageElement).naturalWidth > 0))).toBe(true);
  expect(await alone.locator("body").innerText()).toContain("Nobody measured these numbers");
  expect(asked.filter((address) => !address.startsWith("file:") && !address.startsWith("data:"))).toEqual([]);
  expect(complaints).toEqual([]);
});

test("a project that was saved as one file is opened through the page, and one that was changed is refused", async () => {
  const { page } = report;
  const path = await saved(page, () => page.getByRole("link", { name: "Save the project as one file" }).click());
  await page.locator(".bar-project").click();
  await page.getByText("Open a project file").click();
  const field = page.locator("dialog input[type=file], [role=dialog] input[type=file]");
  await field.setInputFiles({
    name: "cut.zip",
    mimeType: "application/zip",
    buffer: readFileSync(path).subarray(0, 999),
  });
  await expect.poll(() => page.getByRole("alert").innerText()).toContain("Nothing of it was kept");
  await field.setInputFiles(path);
  await expect.poll(() => page.locator(".bar-project-name").innerText()).toBe("Dabchick (2)");
});

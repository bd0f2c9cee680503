import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchBrowser, startWorkbench, type Workbench } from "./workbench.ts";

let workbench: Workbench;
let browser: Browser;

beforeAll(async () => {
  workbench = await startWorkbench();
  browser = await launchBrowser();
});

afterAll(async () => {
  await browser.close();
  await workbench.stop();
});

test("the constants of a motor are found from its runs, used, and taken back", async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(20_000);
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(`${workbench.address}/#/parts`);
  await page.getByRole("button", { name: /^Identify from runs: Motor A/ }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "Use these constants" }).waitFor();
  const answer = await dialog.getByRole("status").first().textContent();
  expect(answer).toMatch(
    /^Kv 45\d\.\d ± [\d.]+\srpm\/V, resistance 12\d[\d.]* ± [\d.]+\smΩ; the no-load current grows/,
  );
  expect(await dialog.textContent()).toContain("clamp it");
  await dialog.getByRole("button", { name: "Use these constants" }).click();
  await dialog.waitFor({ state: "hidden" });
  const row = page.getByRole("row").filter({ hasText: "Motor A" });
  expect(await row.textContent()).toMatch(/45\d\.\d ± [\d.]+\srpm\/V/);
  await page.getByRole("button", { name: "Undo" }).first().click();
  await expect.poll(() => row.textContent()).not.toContain("±");
  expect(complaints).toEqual([]);
  await page.close();
});

test("a run without propeller shows its log and leads to the identification", async () => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  page.setDefaultTimeout(20_000);
  await page.goto(`${workbench.address}/#/bench`);
  await page.getByRole("button", { name: /Motor A without propeller, in air/ }).click();
  await page.getByText("“Identify from runs” under Parts works them out").waitFor();
  expect(await page.getByLabel("On the shaft").inputValue()).toBe("noLoadDry");
  expect(await page.getByLabel("Propeller", { exact: true }).count()).toBe(0);
  await page.close();
});

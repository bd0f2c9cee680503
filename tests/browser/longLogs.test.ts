import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Trace } from "../../shared/model/trace.ts";
import { writeLongLog } from "../bench/longLog.ts";
import { answered, chooseFiles, servedPages } from "./setUp.ts";

/** Long enough for progress to be told, and for a picture to hold many samples in each of its steps. */
const ROWS = 150_000;

const { open, keep } = servedPages();
const folder = mkdtempSync(join(tmpdir(), "bollard-long-"));
const path = join(folder, "long.csv");

beforeAll(() => writeLongLog(path, ROWS));
afterAll(() => rmSync(folder, { recursive: true }));

const long = (name: string) => ({ name, mimeType: "text/csv", buffer: readFileSync(path) });

const fineness = (page: Page) => page.locator("#bench-picture > p[role=status]").textContent();

/** The long log on the bench, for the tests that look at it one after the other. */
let page: Page;

test("a zoom asks for the samples of its stretch, says when they are as logged, and goes back to the whole", async () => {
  ({ page } = await keep("bench"));
  await chooseFiles(page, long("long.csv"));
  await page.getByText("Columns of long.csv").waitFor();
  await expect.poll(() => fineness(page)).toMatch(/^Extremes of each step of 120\sms/);
  const picture = page.getByRole("application", { name: /^Log over time/ });
  await answered(page);
  await picture.focus();
  const [finer] = await Promise.all([page.waitForResponse(/\/trace\?.*from=/), page.keyboard.press("+")]);
  const { start, end }: Trace = await finer.json();
  expect(end - start).toBeLessThan(0.7 * 150);
  for (let step = 0; step < 11; step++) await page.keyboard.press("+");
  await expect.poll(() => fineness(page)).toMatch(/^Samples as logged\./);
  await page.keyboard.press("ArrowRight");
  const spoken = page.locator("#bench-picture .chart-spoken").first();
  await expect.poll(() => spoken.textContent()).toMatch(/Time: \d+\.\d{3,4}\ss/);
  await Promise.all([page.waitForResponse(/\/trace\?.*from=/), page.keyboard.press("Shift+ArrowRight")]);
  await page.getByRole("button", { name: "Whole picture" }).first().click();
  await expect.poll(() => fineness(page)).toMatch(/^Extremes of each step of 120\sms/);
});

test("a wheel of zooms gives up the readings it overtakes and ends at the last", async () => {
  const asked: string[] = [];
  page.on("request", (request) => /\/trace\?.*from=/.test(request.url()) && asked.push(request.url()));
  await page.getByRole("application", { name: /^Log over time/ }).focus();
  for (let step = 0; step < 8; step++) await page.keyboard.press("+");
  await expect.poll(() => fineness(page)).toMatch(/^(Samples as logged\.|Extremes of each step of (?!120\s))/);
  expect(asked.length).toBeLessThan(8);
});

test("the reduction of a long log tells its progress, ends at once when given up, and is begun again", async () => {
  // The answer is held back, so that giving up does not race with the work itself.
  let held = 0;
  await page.route(/\/reduction\/progress$/, () => {
    held += 1;
  });
  const propeller = page.getByLabel("Propeller of this run");
  await propeller.selectOption(await propeller.locator("option").nth(1).getAttribute("value"));
  await page.getByRole("progressbar").waitFor();
  await expect.poll(() => held).toBe(1);
  await Promise.all([
    page.waitForEvent("requestfailed", (request) => /\/reduction\/progress$/.test(request.url())),
    page.getByRole("button", { name: "Cancel" }).click(),
  ]);
  await page.getByText("The reduction was stopped.").first().waitFor();
  await page.unroute(/\/reduction\/progress$/);
  await page.getByRole("button", { name: "Reduce this log" }).click();
  await page.locator("#bench-coefficients").waitFor();
  await expect.poll(() => page.getByRole("progressbar").count()).toBe(0);
});

test("the import of a long log is given up while it is sent: nothing is kept, and it can be sent again", async () => {
  const { page, complaints } = await open("bench");
  const runs = page.getByRole("navigation", { name: "Runs" }).getByRole("listitem");
  await runs.first().waitFor();
  const before = await runs.count();
  const network = await page.context().newCDPSession(page);
  const slow = { offline: false, latency: 0, downloadThroughput: -1, uploadThroughput: 300_000 };
  await network.send("Network.emulateNetworkConditions", slow);
  await chooseFiles(page, long("given-up.csv"));
  await page.getByRole("progressbar", { name: "Reading given-up.csv" }).waitFor();
  await page.getByRole("button", { name: "Cancel" }).click();
  await page.getByText("Drop thrust stand logs here").waitFor();
  await network.send("Network.emulateNetworkConditions", { ...slow, uploadThroughput: -1 });
  await page.reload();
  await page.locator("#bench-picture canvas").first().waitFor();
  await expect.poll(() => runs.count()).toBe(before);
  await chooseFiles(page, long("given-up.csv"));
  await page.getByText("Columns of given-up.csv").waitFor();
  await expect.poll(() => runs.count()).toBe(before + 1);
  expect(complaints).toEqual([]);
});

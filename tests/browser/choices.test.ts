import type { Page } from "playwright-core";
import { beforeAll, expect, onTestFinished, test } from "vitest";
import { answered, servedPages, showRun, visit } from "./setUp.ts";

const { keep } = servedPages();

let page: Page;

/** One window for all; each test has a run of its own. */
beforeAll(async () => {
  page = (await keep("bench")).page;
});

/** Any run of the interface, where it is changed. */
const ONE_RUN = /\/runs\/[^/]+$/;

async function showBenchOf(run: RegExp): Promise<void> {
  onTestFinished(() => page.unrouteAll({ behavior: "ignoreErrors" }));
  await showRun(page, run);
}

/** Holds back what is asked of `address` until the returned function lets it go. */
async function held(address: RegExp): Promise<() => void> {
  let letGo = () => {};
  const gate = new Promise<void>((done) => {
    letGo = done;
  });
  await page.route(address, async (route) => {
    await gate;
    await route.fallback();
  });
  return () => letGo();
}

const section = (name: string) =>
  page.getByRole("navigation", { name: "Sections of this run" }).getByRole("button", { name }).click();

test("a choice is on show while it is stored and while the reduction that rests on it is still to come", async () => {
  await showBenchOf(/^Net propeller sanded.*mounting 3/);
  await section("Zero of the scale");
  const line = page.getByRole("radio", { name: "one straight line through all windows" });
  const stored = await held(ONE_RUN);
  const reduced = await held(/\/reduction$/);
  await line.check();
  expect(await line.isChecked()).toBe(true);
  stored();
  await page.getByText("Tare: one straight line through all windows", { exact: true }).waitFor();
  expect(await line.isChecked()).toBe(true);
  expect(await page.locator("main .answer").getAttribute("aria-busy")).toBe("true");
  reduced();
  await answered(page);
  await page
    .locator("#bench-tare")
    .getByText(/by one straight line through all tare windows/)
    .waitFor();
  expect(await line.isChecked()).toBe(true);
});

test("a choice that can not be stored goes back to what is stored", async () => {
  await showBenchOf(/^Net propeller sanded.*mounting 2/);
  await section("Zero of the scale");
  const line = page.getByRole("radio", { name: "one straight line through all windows" });
  const motor = page.getByLabel("Motor on the stand");
  const before = await motor.inputValue();
  await page.route(ONE_RUN, (route) => route.abort());
  await line.click();
  await expect.poll(() => line.isChecked()).toBe(false);
  await section("On the stand");
  await motor.selectOption("");
  await expect.poll(() => motor.inputValue()).toBe(before);
});

test("an edge that is being typed stays as typed while the picture is drawn anew", async () => {
  await showBenchOf(/^Pitch ratio 1\.0(?! under)/);
  await page.getByText("Edges as numbers").first().click();
  const start = page.getByLabel("Plateau 3, start, s");
  const found = await start.inputValue();
  await start.fill((Number(found) + 0.7).toFixed(3));
  await start.press("Enter");
  await page.getByText("Moved plateau 3", { exact: true }).waitFor();
  await answered(page);
  await start.fill("12.5");
  // By a click that leaves the focus where it is.
  await page.getByRole("button", { name: /^Undo: / }).evaluate((button: HTMLElement) => button.click());
  await page.getByText("Taken back: Moved plateau 3", { exact: true }).waitFor();
  await answered(page);
  expect(await start.inputValue()).toBe("12.5");
  await start.fill("");
  await start.blur();
  await expect.poll(() => start.inputValue()).toBe(found);
});

test("the focus is left with a person who has gone on before the columns were stored", async () => {
  await showBenchOf(/^Pitch ratio 1\.2/);
  await section("Columns");
  const store = page.getByRole("button", { name: "Store these columns" });
  const focused = () => page.evaluate(() => document.activeElement?.id);
  // The section that was asked for takes the focus when it is unfolded.
  await expect.poll(() => page.evaluate(() => document.activeElement?.closest("#bench-columns") !== null)).toBe(true);
  await store.click();
  await expect.poll(focused).toBe("question");

  await page
    .getByRole("combobox", { name: /^Sign of /i })
    .first()
    .selectOption("turned");
  const stored = await held(ONE_RUN);
  await store.click();
  await page.locator("#content").focus();
  stored();
  await page.getByText(/^Confirmed the columns of /).waitFor();
  expect(await focused()).toBe("content");
});

test("the last variant on show can not be taken away, and its box says so", async () => {
  await visit(page, "theory", /How close to the ideal/);
  const boxes = page.getByRole("group", { name: "Variants on show" }).getByRole("checkbox");
  const ticked = () => boxes.evaluateAll((all) => all.filter((box) => (box as HTMLInputElement).checked).length);
  await expect.poll(ticked).toBe(2);
  await page.getByLabel("as printed", { exact: true }).uncheck();
  await expect.poll(ticked).toBe(1);
  await page.getByLabel("sanded", { exact: true }).click();
  await expect.poll(ticked).toBe(1);
});

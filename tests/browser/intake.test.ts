import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { BROKEN_LOGS } from "../unit/brokenLogs.ts";
import { chooseFiles, servedPages } from "./setUp.ts";

const { open } = servedPages();

/** The bench with a broken log dropped, and a 76 mm propeller of the demonstration on the stand. */
async function benchWith(name: string): Promise<Page> {
  const { page } = await open("bench");
  const buffer = Buffer.from(BROKEN_LOGS.find((log) => log.name === name)!.bytes);
  await chooseFiles(page, { name: `${name}.csv`, mimeType: "text/csv", buffer });
  await page.getByText(`Columns of ${name}.csv`).waitFor();
  const propeller = page.getByLabel("Propeller of this run");
  const first = await propeller.locator("option").nth(1).getAttribute("value");
  await propeller.selectOption(first);
  return page;
}

test("a unit that can not be is asked about with what each would mean, and changed only by the person", async () => {
  const page = await benchWith("gram-force labelled newton");
  const choices = page.locator(".bench-choices");
  await expect.poll(() => choices.textContent()).toMatch(/In newton .*above the momentum limit .*impossible/);
  await expect.poll(() => page.getByLabel("Unit of thrust (N)").inputValue()).toBe("N");
  await choices.getByRole("button", { name: "Read it in g (the only possible one)" }).click();
  await expect.poll(() => page.getByLabel("Unit of thrust (N)").inputValue()).toBe("g");
  await page.getByRole("button", { name: "These columns are right" }).click();
  await expect.poll(() => choices.count()).toBe(0);
});

test("a repair is switched off, says so, and is taken back by undo", async () => {
  const page = await benchWith("ragged rows");
  const repairs = page.locator(".bench-repairs");
  await repairs.getByRole("button", { name: "Leave these rows out whole" }).first().click();
  await expect.poll(() => repairs.textContent()).toContain("left out whole, as you chose");
  await page.keyboard.press("Control+z");
  await expect.poll(() => repairs.textContent()).not.toContain("as you chose");
});

test("the electrical log of the same run is added, laid over the log, and moved by hand", async () => {
  const page = await benchWith("two logs apart");
  const meter = Buffer.from(BROKEN_LOGS.find((log) => log.name === "two logs apart")!.companion!);
  await page.getByText("Add the electrical log of the same run").click();
  await chooseFiles(page, { name: "meter.csv", mimeType: "text/csv", buffer: meter }, 1);
  const panel = page.locator("details", { hasText: "Electrical log: meter.csv" });
  await expect.poll(() => panel.textContent(), { timeout: 15_000 }).toMatch(/−412\.3 s ± .* correlation/);
  await expect.poll(() => panel.locator("canvas").count()).toBe(1);
  await panel.getByLabel("Added to its clock").fill("-410 s");
  await panel.getByLabel("Added to its clock").press("Enter");
  await expect.poll(() => panel.textContent()).toContain("as you stated");
  await panel.getByRole("button", { name: "Find it from both logs" }).click();
  await expect.poll(() => panel.textContent()).toContain("correlation");
});

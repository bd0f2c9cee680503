import { expect, test } from "vitest";
import { answered, servedPages } from "./setUp.ts";

const { open } = servedPages();

test("the parts are searched, and the best is opened on Drive", async () => {
  const { page } = await open("shortlist");
  await answered(page);
  await page.getByRole("button", { name: "Search the parts" }).click();
  const answer = page.locator(".answer");
  await expect.poll(() => answer.textContent()).toMatch(/combinations meet the requirement/);
  await expect.poll(() => page.locator(".shortlist-table tbody tr").count()).toBeGreaterThan(0);
  await expect.poll(() => page.locator(".shortlist-failures li").count()).toBeGreaterThan(0);
  const best = (await page.locator(".shortlist-closer h3").textContent()) ?? "";
  await page.getByRole("button", { name: "Open it on Drive" }).click();
  await page.getByRole("heading", { level: 1, name: /What will it pull/ }).waitFor();
  const motor = page.getByLabel("Motor", { exact: true });
  await expect.poll(async () => best.includes((await motor.locator("option:checked").textContent()) ?? "?")).toBe(true);
});

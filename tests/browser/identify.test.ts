import { expect, test } from "vitest";
import { servedPages } from "./setUp.ts";

const { open } = servedPages();

test("the constants of a motor are found from its runs, used, and taken back", async () => {
  const { page, complaints } = await open("parts");
  await page.getByRole("button", { name: /^Identify from runs: Motor A/ }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "Use these constants" }).waitFor();
  await expect
    .poll(() => dialog.getByRole("status").first().textContent())
    .toMatch(/^Kv 45\d\.\d ± [\d.]+\srpm\/V, resistance 12\d[\d.]* ± [\d.]+\smΩ; the no-load current grows/);
  await expect.poll(() => dialog.textContent()).toContain("clamp it");
  await dialog.getByRole("button", { name: "Use these constants" }).click();
  await dialog.waitFor({ state: "hidden" });
  const row = page.getByRole("row").filter({ hasText: "Motor A" });
  await expect.poll(() => row.textContent()).toMatch(/45\d\.\d ± [\d.]+\srpm\/V/);
  await page.getByRole("button", { name: "Undo" }).first().click();
  await expect.poll(() => row.textContent()).not.toContain("±");
  expect(complaints).toEqual([]);
});

test("a run without propeller shows its log and leads to the identification", async () => {
  const { page } = await open("bench");
  await page.getByRole("button", { name: /Motor A without propeller, in air/ }).click();
  await page.getByText("“Identify from runs” under Parts works them out").waitFor();
  await expect.poll(() => page.getByLabel("On the shaft").inputValue()).toBe("noLoadDry");
  await expect.poll(() => page.getByLabel("Propeller", { exact: true }).count()).toBe(0);
});

import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { servedPages } from "./setUp.ts";

const { open } = servedPages();

const mounting = (page: Page) => page.getByRole("combobox", { name: "Mounting" });

async function standOf(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Pitch ratio 0\.8/ }).click();
  await page.getByRole("button", { name: "On the stand", exact: true }).click();
  await mounting(page).waitFor();
}

async function type(page: Page, text: string): Promise<void> {
  await mounting(page).fill(text);
  await mounting(page).press("Enter");
}

test("of two tabs that change one run, the second is asked which version stays; either can be kept, by keyboard", async () => {
  const { page: first } = await open("bench");
  const { page: second } = await open("bench");
  for (const page of [first, second]) await standOf(page);

  await type(first, "2");
  await first.getByText(/^Set the mounting of/).waitFor();
  await type(second, "3");
  const dialog = second.getByRole("dialog", { name: /Pitch ratio 0\.8 was changed in another tab/ });
  await dialog.waitFor();
  await second.keyboard.press("Escape");
  expect(await dialog.isVisible(), "it must be answered").toBe(true);
  await second.keyboard.press("Enter");
  await expect.poll(() => mounting(second).inputValue()).toBe("2");
  await second.getByText(/your change was not made/).waitFor();

  await type(second, "4");
  await second.getByText(/^Set the mounting of/).waitFor();
  await type(first, "5");
  await first
    .getByRole("dialog")
    .getByRole("button", { name: /^Keep mine/ })
    .click();
  await first.getByRole("dialog").waitFor({ state: "detached" });
  await second.reload();
  await standOf(second);
  await expect.poll(() => mounting(second).inputValue()).toBe("5");
});

test("a run stays on show when a change gives it another place in the list", async () => {
  const { page } = await open("bench");
  const shown = page.getByRole("navigation", { name: "Runs" }).locator("[aria-current]");
  const before = await shown.locator(".bench-run-name").textContent();
  await page.getByRole("button", { name: "On the stand", exact: true }).click();
  await type(page, "9");
  await page.getByText(/^Set the mounting of/).waitFor();
  await expect.poll(() => shown.locator(".bench-run-name").textContent()).toBe(before);
  await expect.poll(() => mounting(page).inputValue()).toBe("9");
});

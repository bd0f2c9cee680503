import { describe, expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { QUESTIONS, servedPages, unfoldAll } from "./setUp.ts";

const { open } = servedPages();

describe.each(QUESTIONS)("$name", ({ name, question }) => {
  test("is headed by its question, answers it in words, and complains of nothing", async () => {
    const { page, complaints } = await open(name);
    await expect.poll(() => page.getByRole("heading", { level: 1 }).innerText()).toMatch(question);
    await expect.poll(() => page.locator("main [role=status]").first().innerText()).toMatch(/.{21}/s);
    expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
    expect(complaints).toEqual([]);
  });

  test("fits a telephone without a sideways scroll", async () => {
    const { page } = await open(name, { viewport: { width: 390, height: 900 } });
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });

  test.each(["light", "dark"] as const)("meets WCAG 2.2 AA by the rules of axe, %s", async (colorScheme) => {
    const { page } = await open(name, { colorScheme, bypassCSP: true });
    expect(await violationsOf(page)).toEqual([]);
  });
});

test.each(["light", "dark"] as const)(
  "the bench meets WCAG 2.2 AA with every section unfolded, %s",
  async (colorScheme) => {
    const { page } = await open("bench", { colorScheme, bypassCSP: true });
    await page.locator("#bench-coefficients").waitFor();
    await unfoldAll(page);
    expect(await violationsOf(page)).toEqual([]);
  },
);

test("the bench stands in the document in the order it is drawn in, in a wide window and on a telephone", async () => {
  const { page } = await open("bench", { viewport: { width: 390, height: 900 } });
  await page.locator(".bench-main #bench-plateaus").waitFor();
  const isMainFirst = () =>
    page.evaluate(() => {
      const [main, side] = [".bench-main", ".bench-side"].map((name) => document.querySelector(name)!);
      const [here, there] = [main!.getBoundingClientRect(), side!.getBoundingClientRect()];
      const follows = main!.compareDocumentPosition(side!) & Node.DOCUMENT_POSITION_FOLLOWING;
      return { read: follows !== 0, drawn: here.top < there.top || here.left < there.left };
    });
  await expect.poll(isMainFirst).toEqual({ read: true, drawn: true });
  await page.setViewportSize({ width: 1440, height: 900 });
  await expect.poll(isMainFirst).toEqual({ read: false, drawn: false });
});

import { describe, expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { servedPages } from "./setUp.ts";

/** Each screen with the question that heads it. */
const SCREENS = [
  { name: "overview", question: /What is measured/ },
  { name: "parts", question: /What can a thruster be built from/ },
  { name: "bench", question: /What does this log say/ },
  { name: "variants", question: /How much did/ },
  { name: "theory", question: /How close to the ideal/ },
  { name: "drive", question: /What will it pull in the water/ },
] as const;

const { open } = servedPages();

describe.each(SCREENS)("$name", ({ name, question }) => {
  test("is headed by its question, answers it in words, and complains of nothing", async () => {
    const { page, complaints } = await open(name);
    expect(await page.getByRole("heading", { level: 1 }).innerText()).toMatch(question);
    expect((await page.locator("main [role=status]").first().innerText()).length).toBeGreaterThan(20);
    expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
    expect(complaints).toEqual([]);
  });

  test("fits a telephone without a sideways scroll", async () => {
    const { page } = await open(name, { viewport: { width: 390, height: 900 } });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
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
    await page.evaluate(() => {
      for (const section of document.querySelectorAll("details")) section.open = true;
    });
    await page.waitForLoadState("networkidle");
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
  expect(await isMainFirst()).toEqual({ read: true, drawn: true });
  await page.setViewportSize({ width: 1440, height: 900 });
  await expect.poll(isMainFirst).toEqual({ read: false, drawn: false });
});

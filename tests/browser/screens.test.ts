import { beforeAll, describe, expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { type OpenPage, QUESTIONS, servedPages, unfoldAll, visit } from "./setUp.ts";

const { keep } = servedPages();

let opened: OpenPage;

/** One window for all: opening another costs more than all that is looked at in it. */
beforeAll(async () => {
  opened = await keep("drive", { colorScheme: "light", reducedMotion: "reduce" });
});

async function inWideLight() {
  await opened.page.emulateMedia({ colorScheme: "light" });
  await opened.page.setViewportSize({ width: 1440, height: 900 });
}

describe.each(QUESTIONS)("$name", ({ name, question }) => {
  beforeAll(async () => {
    await inWideLight();
    await visit(opened.page, name, question);
  });

  test("is headed by its question, answers it in words, and complains of nothing", async () => {
    const { page, complaints } = opened;
    await expect.poll(() => page.getByRole("heading", { level: 1 }).innerText()).toMatch(question);
    await expect.poll(() => page.locator("main [role=status]").first().innerText()).toMatch(/.{21}/s);
    expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
    expect(complaints).toEqual([]);
  });

  test("meets WCAG 2.2 AA by the rules of axe, light and dark", async () => {
    const { page } = opened;
    expect(await violationsOf(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    expect(await violationsOf(page, "colours")).toEqual([]);
  });

  test("fits a telephone without a sideways scroll", async () => {
    const { page } = opened;
    await page.setViewportSize({ width: 390, height: 900 });
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});

describe("the bench", () => {
  beforeAll(async () => {
    const { page } = opened;
    await inWideLight();
    await visit(page, "bench", /What does this log say/);
    await page.locator("#bench-coefficients").waitFor();
  });

  test("stands in the document in the order it is drawn in, on a telephone and in a wide window", async () => {
    const { page } = opened;
    await page.setViewportSize({ width: 390, height: 900 });
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

  test("meets WCAG 2.2 AA with every section unfolded, light and dark", async () => {
    const { page } = opened;
    await unfoldAll(page);
    expect(await violationsOf(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    expect(await violationsOf(page, "colours")).toEqual([]);
  });
});

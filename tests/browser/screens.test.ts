import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { launchBrowser, startWorkbench, type Workbench } from "./workbench.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Each screen with the question that heads it. */
const SCREENS = [
  { name: "overview", question: /What is measured/ },
  { name: "parts", question: /What can a thruster be built from/ },
  { name: "bench", question: /What does this log say/ },
  { name: "variants", question: /How much did/ },
  { name: "theory", question: /How close to the ideal/ },
  { name: "drive", question: /What will it pull in the water/ },
] as const;

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

interface Look {
  readonly width: number;
  readonly colorScheme: "light" | "dark";
}

/** Opens a screen of the demo; `complaints` fills with whatever the page reports as wrong. */
async function open(name: string, { width, colorScheme }: Look, bypassCSP = false) {
  const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme, bypassCSP });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on("console", (message) => message.type() === "error" && complaints.push(message.text()));
  page.on("pageerror", (error) => complaints.push(error.message));
  await page.goto(`${workbench.address}/#/${name}`);
  const heading = page.getByRole("heading", { level: 1 });
  await heading.waitFor();
  await page.waitForLoadState("networkidle");
  return { context, page, heading, complaints };
}

describe.each(SCREENS)("$name", ({ name, question }) => {
  test("is headed by its question, answers it in words, and complains of nothing", async () => {
    const { context, page, heading, complaints } = await open(name, { width: 1440, colorScheme: "light" });
    expect(await heading.innerText()).toMatch(question);
    expect((await page.locator("main [role=status]").first().innerText()).length).toBeGreaterThan(20);
    expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test("fits a telephone without a sideways scroll", async () => {
    const { context, page } = await open(name, { width: 390, colorScheme: "light" });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await context.close();
  });

  test.each(["light", "dark"] as const)("meets WCAG 2.2 AA by the rules of axe, %s", async (colorScheme) => {
    // axe has to be put into the page, which the page's own policy forbids.
    const { context, page } = await open(name, { width: 1440, colorScheme }, true);
    await page.addScriptTag({ content: AXE });
    const violations = await page.evaluate(async () => {
      const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
      // @ts-expect-error axe is put into the page above
      const found = await window.axe.run({ runOnly: tags });
      return found.violations.map((one: { id: string; nodes: { target: string[] }[] }) => [
        one.id,
        ...one.nodes.map(({ target }) => target.join(" ")),
      ]);
    });
    expect(violations).toEqual([]);
    await context.close();
  });
});

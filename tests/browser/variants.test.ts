import type { Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { ratioInWords } from "../../shared/compare/ratioInWords.ts";
import type { VariantRatio } from "../../shared/model/comparison.ts";
import { violationsOf } from "./axe.ts";
import { type OpenPage, servedPages, unfoldAll, visit } from "./setUp.ts";

const { open, keep, address } = servedPages();

/** Variants with every run reduced, in a window of its own. */
async function openVariants(how = open, options = {}) {
  const opened = await how("variants", options);
  await opened.page.getByRole("heading", { level: 1 }).waitFor();
  await opened.page.locator("main [role=status]").filter({ hasText: "Sanded gives" }).first().waitFor();
  await unfoldAll(opened.page, "details.fold");
  return opened;
}

const status = (page: Page, id: string) => page.locator(`#${id} [role=status]`).first().textContent();

describe("the study of variants, looked at in one window,", () => {
  let opened: OpenPage;
  beforeAll(async () => {
    opened = await openVariants(keep, { colorScheme: "light", reducedMotion: "reduce" });
  });

  test("says what else differs, whether the answer holds and how many mountings a difference takes", async () => {
    const { page, complaints } = opened;
    const factors = () => page.locator("#variants-factors").innerText();
    await expect.poll(factors).toMatch(/finish/);
    await expect.poll(factors).toMatch(/what is compared/);
    await expect.poll(() => page.locator("#variants-robustness").innerText()).toMatch(/holds/);
    await expect.poll(() => status(page, "variants-planner")).toMatch(/mountings of each variant/);
    const text = await page.locator("main").innerText();
    expect(text).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
    expect(complaints).toEqual([]);
  });

  test("tells the same ratios as the interface, at equal rotation rate, electrical power and throttle", async () => {
    const { page } = opened;
    const { projects } = await (await page.request.get(`${address()}/api/projects`)).json();
    const { runs } = await (await page.request.get(`${address()}/api/projects/${projects[0].id}/runs`)).json();
    const idsOf = (variant: string) =>
      runs
        .filter((run: { document: { variant: string } }) => run.document.variant === variant)
        .map(({ id }: { id: string }) => id);
    const groups = ["as printed", "sanded"].map((name) => ({ name, runs: idsOf(name) }));
    const asked = { data: { groups, baseline: "as printed" } };
    const answer = await page.request.post(`${address()}/api/projects/${projects[0].id}/comparison`, asked);
    const { comparisons } = await answer.json();
    const table = () => page.locator("#variants-table").locator("xpath=..").innerText();
    const ratios = comparisons[0].answers.map(({ ratio }: { ratio: VariantRatio | null }) => ratio);
    for (const ratio of ratios) if (ratio !== null) await expect.poll(table).toContain(ratioInWords(ratio));
  });

  test.each([
    ["ratio", "Ratio against rotation rate"],
    ["electrical", "Thrust against electrical power"],
    ["shaft", "Thrust against shaft power"],
  ])("shows the picture %s with the measured points of both", async (picture, name) => {
    const { page, complaints } = opened;
    await visit(page, `variants?picture=${picture}`, /How much did/);
    await page.getByRole("radio", { name, checked: true }).waitFor();
    const legend = page.locator("figure.chart").first().locator(".legend");
    await legend.getByText("sanded").first().waitFor();
    await legend.getByText("as printed").first().waitFor();
    expect(complaints).toEqual([]);
  });

  test("meets WCAG 2.2 AA unfolded, light and dark", async () => {
    const { page } = opened;
    await unfoldAll(page);
    expect(await violationsOf(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    expect(await violationsOf(page, "colours")).toEqual([]);
  });
});

describe("the study of variants, changed,", () => {
  test("a trend over the pitch needs several pitches on show, and has the series behind it", async () => {
    const { page } = await openVariants();
    await expect.poll(() => page.locator("#variants-trend").innerText()).toMatch(/tick more of them above/);
    for (const name of ["pitch 0.8", "pitch 1.0", "pitch 1.2"]) await page.getByLabel(name, { exact: true }).check();
    await page.getByLabel("as printed", { exact: true }).uncheck();
    await expect.poll(() => status(page, "variants-trend")).toMatch(/rises by \d+\s%/);
    await page
      .locator("#variants-trend")
      .getByText(/B 3-\d\d, smooth and large/)
      .waitFor();
  });

  test("groups are made by a factor in one choice, and a run is dragged onto another variant, undone by Control+Z", async () => {
    const { page } = await openVariants();
    await page.getByLabel("Groups made by").selectOption("motor");
    await page.getByRole("checkbox", { name: "Motor A, 455 rpm/V" }).waitFor();
    await page.getByLabel("Groups made by").selectOption("variant");
    const row = page.getByRole("row").filter({ hasText: "Net propeller sanded, mounting 1" });
    const choice = page.getByLabel("Variant of Net propeller sanded, mounting 1", { exact: true });
    const place = page.locator(".drop-place", { hasText: /^as printed$/ });
    await row.locator(".drag-handle").dragTo(place);
    await expect.poll(() => choice.inputValue()).toBe("as printed");
    await page.keyboard.press("Control+z");
    await expect.poll(() => choice.inputValue()).toBe("sanded");
  });

  test("the run sheet prints alone, in drawn order, with room to write and the cautions", async () => {
    const { page } = await openVariants();
    await page.evaluate(() => {
      // Chromium would open a dialog: what is asked for is enough.
      window.print = () =>
        document.documentElement.setAttribute("data-asked", document.documentElement.dataset["printed"] ?? "");
    });
    await page.getByText(/^Run sheet: \d+ runs/).click();
    const sheet = page.locator(".run-sheet-page");
    await expect.poll(() => sheet.innerText()).toMatch(/seed 1/);
    await expect.poll(() => sheet.innerText()).toMatch(/pack/i);
    await page.getByRole("button", { name: "Print the run sheet" }).click();
    await expect.poll(() => page.evaluate(() => document.documentElement.dataset["asked"])).toBe("run-sheet");
    await page.emulateMedia({ media: "print" });
    await expect.poll(() => sheet.isVisible()).toBe(true);
    await expect.poll(() => page.locator("h1").isVisible()).toBe(false);
    // Nothing behind it that would print as empty pages.
    await expect.poll(() => page.evaluate(() => document.body.scrollHeight <= innerHeight)).toBe(true);
  });
});

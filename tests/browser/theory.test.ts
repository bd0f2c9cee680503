import type { Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { answered, type OpenPage, servedPages, unfoldAll, visit } from "./setUp.ts";

const { open, keep, address } = servedPages();

let opened: OpenPage;

/** A window for the tests of one group, which are written in the order in which one leaves it good for the next. */
const inOneWindow = () =>
  beforeAll(async () => {
    opened = await keep("theory", { colorScheme: "light", reducedMotion: "reduce" });
  });

/** Theory with every run reduced: the pictures show the measured variants. */
async function showTheory(picture: string): Promise<OpenPage> {
  await visit(opened.page, `theory?picture=${picture}`, /How close to the ideal/);
  await opened.page.getByText("Sanded makes", { exact: false }).first().waitFor();
  return opened;
}

async function post(page: Page, path: string, body: unknown) {
  const answer = await page.request.post(`${address()}/api/compute/${path}`, { data: body });
  expect(answer.status()).toBe(200);
  return answer.json();
}

/** Shows the table under the first picture: numbers by the name of their series. */
async function openTable(page: Page) {
  const figure = page.locator("figure.chart").first();
  await figure.getByRole("button", { name: "Table" }).click();
  return figure.locator("table");
}

describe("predictions", () => {
  inOneWindow();

  test("one is added by a form, stands in the list and in the picture, and goes with undo", async () => {
    const { page, complaints } = await showTheory("advance");
    await page.getByRole("button", { name: "Add a prediction" }).click();
    const dialog = page.getByRole("dialog");
    await dialog.getByLabel("Number of blades").fill("4");
    await dialog.getByLabel("Expanded area ratio").fill("0.7");
    await dialog.getByLabel("Pitch ratio").fill("1");
    await dialog.getByLabel("Name").fill("B 4-70");
    await dialog.getByRole("button", { name: "Add", exact: true }).click();
    await page.getByRole("button", { name: "Remove B 4-70" }).waitFor();
    // B4-70 at P/D 1.0, J 0: K_T 0.4547 (Oosterveld & van Oossanen 1975, table 5).
    const table = await openTable(page);
    await expect.poll(() => table.innerText()).toMatch(/B 4-70\t0\t0\.4547/);
    await page.keyboard.press("Control+z");
    await page.getByRole("button", { name: "Remove B 4-70" }).waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
  });

  test("three pictures of one diagram share one legend, which takes a curve out of all of them", async () => {
    const { page } = await showTheory("advance");
    await expect.poll(() => page.locator(".picture .legend").count()).toBe(1);
    await expect.poll(() => page.locator(".picture figure.chart").count()).toBe(3);
    const entry = page.locator(".picture .legend-entry").first();
    await entry.click();
    await expect.poll(() => entry.getAttribute("aria-pressed")).toBe("false");
  });

  test("ten curves carry ten numbers that the legend explains", async () => {
    const { page } = await showTheory("power");
    const { projects } = await (await page.request.get(`${address()}/api/projects`)).json();
    const [{ id, version, document }] = projects;
    const predictions = Array.from({ length: 7 }, (_, at) => ({
      name: `B 3-50, P/D ${(0.6 + at / 10).toFixed(1)}`,
      source: {
        kind: "series",
        diameter: 0.076,
        series: { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.6 + at / 10 },
      },
    }));
    const changed = { version, document: { ...document, predictions } };
    expect((await page.request.put(`${address()}/api/projects/${id}`, { data: changed })).status()).toBe(200);
    await page.reload();
    await answered(page);
    const numbers = page.locator("figure.chart").first().locator(".legend-number");
    await expect.poll(() => numbers.allInnerTexts()).toEqual(Array.from({ length: 10 }, (_, at) => String(at + 1)));
    const back = await (await page.request.get(`${address()}/api/projects/${id}`)).json();
    await page.request.put(`${address()}/api/projects/${id}`, { data: { version: back.version, document } });
  });

  test("a form that lacks something says what, and keeps what was typed", async () => {
    const { page } = await showTheory("power");
    await page.getByRole("button", { name: "Add a prediction" }).click();
    const dialog = page.getByRole("dialog");
    await dialog.getByLabel("Computed from").selectOption("staticMerit");
    await dialog.getByLabel("Static merit").fill("");
    await dialog.getByRole("button", { name: "Add", exact: true }).click();
    await dialog.getByRole("alert").filter({ hasText: "Give the static merit." }).waitFor();
    await expect.poll(() => dialog.getByLabel("Computed from").inputValue()).toBe("staticMerit");
  });
});

describe("the cards", () => {
  inOneWindow();

  test("are folded but for the answer, keep a note, and open from the list of sections by keyboard alone", async () => {
    const { page, complaints } = await showTheory("power");
    const open = page.locator("main details.fold[open] > summary > h2");
    await expect
      .poll(() => open.allInnerTexts())
      .toEqual(["How close each variant comes", "Predictions laid over the measurements"]);
    await expect
      .poll(() => page.locator("#theory-losses .fold-note").innerText())
      .toMatch(/^sanded: static merit 0\.\d+ ± 0\.\d+$/);
    await expect.poll(() => page.locator("#theory-losses .loss-bars").count()).toBe(0);
    const sections = page.getByRole("navigation", { name: "Sections of this screen" });
    await sections.getByRole("button", { name: "Where the power goes" }).focus();
    await page.keyboard.press("Enter");
    await page.locator("#theory-losses .loss-bars").waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain("Where the power goes");
    await page.keyboard.press("Enter");
    await page.locator("#theory-losses .loss-bars").waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
  });

  test("tell the same pitch and power as the interface", async () => {
    const { page } = await showTheory("power");
    await page.locator("#theory-pitch > summary").click();
    await page.getByText("Lay it over the measurements").waitFor();
    const told = () => page.locator("#theory-pitch").innerText();
    const found = await post(page, "best-pitch", {
      series: { family: "wageningen-b", blades: 3, areaRatio: 0.38 },
      duty: { given: "thrust", thrust: 20 },
      fixed: { given: "diameter", diameter: 0.076 },
      density: 998.598,
      kinematicViscosity: 1.0543e-6,
    });
    await expect.poll(told).toContain(`P/D ${found.best.pitchRatio.toFixed(3)}`);
    await expect.poll(told).toContain(`needs ${found.best.shaftPower.toFixed(1)}\u202fW`);
  });

  test("tell the same static merit in the heading, in the table and with the losses", async () => {
    const { page } = await showTheory("power");
    const [, percent] = /Sanded makes ([\d.]+ ± [\d.]+)/.exec(await page.locator(".answer").innerText())!;
    await expect.poll(() => page.locator("#theory-closeness").innerText()).toContain(`${percent}\u202f%`);
    await page.locator("#theory-losses > summary").click();
    await expect
      .poll(() => page.locator("#theory-losses .loss-bars li").first().innerText())
      .toContain(`${percent}\u202f%`);
    await page.locator("#theory-losses .method-links").getByRole("button", { name: "Account of the power" }).click();
    await expect.poll(() => page.locator("#method-losses").innerText()).toContain("Ω r F_t");
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe("Account of the power");
    await expect
      .poll(() => page.locator(".basis").innerText())
      .toMatch(/B 3-38, P\/D 1\.00, laid over it .* sanded makes [\d.]+ ±/);
  });

  test("take a surface by how the blades were made, say where its numbers come from, and let them be changed", async () => {
    const { page } = await showTheory("power");
    await page.locator("#theory-blade > summary").click();
    const card = page.locator("#theory-blade");
    const status = card.getByRole("status").first();
    const smooth = await status.innerText();
    await card.getByLabel("Surface", { exact: true }).selectOption({ label: "As printed" });
    await card.getByText("cusp height", { exact: false }).waitFor();
    await expect.poll(() => card.getByLabel("Layer height").inputValue()).toBe("0.2 mm");
    await expect.poll(() => status.innerText()).not.toBe(smooth);
    const asPrinted = await card.getByLabel("Roughness height").inputValue();
    await card.getByLabel("Layer height").fill("0.1 mm");
    await expect.poll(() => card.getByLabel("Roughness height").inputValue()).not.toBe(asPrinted);
    await card.getByLabel("Lift factor").fill("0.8");
    await expect.poll(() => card.getByLabel("Surface", { exact: true }).inputValue()).toBe("");
  });

  test("answer for finish, losses, blade, strength and water in words, with cautions, and complain of nothing", async () => {
    const { page, complaints } = await showTheory("speed");
    await unfoldAll(page);
    const text = () => page.locator("main").innerText();
    for (const words of [
      /Going from as printed to sanded/,
      /Sanded has a static merit of 0\.\d+ ± 0\.\d+/,
      /By blade elements it pushes/,
      /Safety factor/,
      /put a guard around the propeller plane/,
      /draw air/,
      /At rest the computed thrust is off by/,
    ])
      await expect.poll(text).toMatch(words);
    expect(await text()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
    expect(complaints).toEqual([]);
  });

  test("meet WCAG 2.2 AA unfolded, light and dark", async () => {
    const { page } = await showTheory("residual");
    await unfoldAll(page);
    expect(await violationsOf(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: "dark" });
    expect(await violationsOf(page, "colours")).toEqual([]);
  });
});

test("a blade shape is pasted on Parts with its fault named, mended, seen and kept", async () => {
  const { page, complaints } = await open("parts");
  await page.getByRole("button", { name: "Blade shape of Net propeller, sanded" }).click();
  const dialog = page.getByRole("dialog");
  const table = dialog.getByLabel("Sections, one row a radius");
  const rows = (chord: string) =>
    `radius (mm),chord (mm),pitch angle (deg),thickness (mm),camber (mm)\n8,14,56.5,2.5,0.5\n20,${chord},31.2,2,0.5\n30,17,21.9,1.5,0.4\n38,2,17.7,1,0.1`;
  await table.fill(rows("-18"));
  await dialog.getByText(/chord/i).filter({ hasText: "18" }).first().waitFor();
  await expect.poll(() => dialog.getByRole("button", { name: "Save" }).isDisabled()).toBe(true);
  await table.fill(rows("18"));
  await dialog.getByText("4 sections from 8.00\u202fmm to 38.0\u202fmm").waitFor();
  await dialog.getByRole("button", { name: "Save" }).click();
  await dialog.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Blade shape of Net propeller, sanded" }).click();
  await expect.poll(() => page.getByLabel("Sections, one row a radius").inputValue()).toContain("20; 18; 31.2; 2; 0.5");
  expect(complaints).toEqual([]);
});

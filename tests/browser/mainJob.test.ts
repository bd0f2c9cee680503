import { resolve } from "node:path";
import type { Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import type { Reduction } from "../../shared/model/reduction.ts";
import { formatUncertain } from "../../shared/quantity/format.ts";
import { startedCli } from "../cli/startedCli.ts";
import { answered, isNoRefusal, servedPages } from "./setUp.ts";

const LOGS = resolve(import.meta.dirname, "../../samples/logs");
const FINISHES = [
  { finish: "as printed", file: "finish-as-printed-1.csv" },
  { finish: "sanded", file: "finish-sanded-1.csv" },
] as const;

const { keep, address } = servedPages("--no-demo");
let page: Page;
let complaints: readonly string[];

beforeAll(async () => {
  ({ page, complaints } = await keep(""));
});

const screen = (name: string) => page.getByRole("link", { name, exact: true }).click();
const runButton = (file: string) => page.getByRole("button", { name: new RegExp(`^${file.replace(/\.csv$/, "")}`) });
const answer = () => page.locator("main [role=status]").first().innerText();

async function makeProject() {
  await page.goto(address());
  await page.getByRole("button", { name: "Make a project" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("textbox", { name: "Name" }).fill("Two finishes");
  await dialog.getByLabel("Water the vehicle works in").fill("sea 12C 33");
  await dialog.getByRole("button", { name: "Make project" }).click();
  await page.getByRole("button", { name: /Two finishes/ }).waitFor();
}

async function fillPart(button: RegExp, fields: Readonly<Record<string, string>>) {
  await page.getByRole("button", { name: button }).click();
  const dialog = page.getByRole("dialog");
  for (const [label, text] of Object.entries(fields)) {
    await dialog
      .getByLabel(new RegExp(`^${label}`))
      .first()
      .fill(text);
  }
  await dialog.getByRole("button", { name: "Save" }).click();
  await dialog.waitFor({ state: "detached" });
}

/** What the interface answers for each run of the open project, by file name. */
async function reductions(): Promise<Map<string, Reduction>> {
  return new Map(
    await page.evaluate(async () => {
      const get = async (path: string) => (await fetch(path)).json();
      const { projects } = await get("/api/projects");
      const base = `/api/projects/${projects[0].id}/runs`;
      const { runs } = await get(base);
      return Promise.all(
        runs.map(async (run: { id: string; document: { file: { name: string } } }) => [
          run.document.file.name,
          await get(`${base}/${run.id}/reduction`),
        ]),
      );
    }),
  );
}

test("a builder makes a project, enters propellers, motor and pack", async () => {
  await makeProject();
  await screen("Parts");
  for (const { finish } of FINISHES) {
    await fillPart(/Add a propeller/, {
      Name: finish,
      "Diameter over": "76 mm",
      "Standard uncertainty": "0.1 mm",
      "Surface finish": finish,
    });
  }
  await fillPart(/Add a motor/, {
    Name: "Bench motor",
    "Speed constant": "455 rpm/V",
    "Winding resistance": "130 mohm",
    "No-load current": "0.55 A",
  });
  await fillPart(/Add a controller/, { Name: "Controller", Resistance: "8 mohm" });
  await fillPart(/Add a pack/, { Name: "Four cells", "Open-circuit voltage": "14.8 V", Resistance: "35 mohm" });
  await expect.poll(() => page.locator("main").innerText()).toContain("Four cells");
});

test("both logs are dropped at once, and the columns are shown for confirmation with their reasons", async () => {
  await screen("Bench");
  await page
    .locator("input[type=file]")
    .first()
    .setInputFiles(FINISHES.map(({ file }) => resolve(LOGS, file)));
  for (const { file } of FINISHES) await runButton(file).waitFor();
  for (const { finish, file } of FINISHES) {
    await runButton(file).click();
    await page
      .getByText(/Taken as thrust/)
      .first()
      .waitFor();
    await page.getByRole("button", { name: "These columns are right" }).click();
    await page.getByLabel("Propeller of this run").selectOption({ label: finish });
    await page.getByText("These columns are right").waitFor({ state: "detached" });
  }
  await expect.poll(answer, { timeout: 15_000 }).toMatch(/thrust coefficient is 0\.\d+ ± 0\.\d+/);
  await page.getByText("Assumed, as nobody stated it: fresh water, 18 °C.").waitFor();
});

test("page, interface and command line give the same thrust coefficients to all printed digits", async () => {
  const found = await reductions();
  for (const { file, finish } of FINISHES) {
    const words = ["--diameter", "76mm ± 0.1mm", "--water", "fresh 18C", "--json"];
    const { stdout } = await startedCli("reduce", resolve(LOGS, file), ...words);
    const byCommand: Reduction = JSON.parse(stdout);
    const byInterface = found.get(file)!;
    expect(byInterface.thrustCoefficient, finish).toEqual(byCommand.thrustCoefficient);
    expect(byInterface.exponent, finish).toEqual(byCommand.exponent);
    await runButton(file).click();
    await page.getByText(formatUncertain(byCommand.thrustCoefficient)).first().waitFor();
  }
});

test("Variants answers how much the finish gained, with its interval, and judges the claim of a doubling", async () => {
  await screen("Variants");
  await page.getByRole("heading", { level: 1, name: /How much did .*sanded.* gain/ }).waitFor();
  await page
    .getByText(/gives 1\.[56]\d+ times the thrust/)
    .first()
    .waitFor();
  // Nobody claims anything until somebody says so; then it is kept with the project.
  const words = () => page.locator("main").innerText();
  await expect.poll(words).toMatch(/Does somebody claim a gain/);
  expect(await words()).not.toMatch(/more than 2 times/);
  const claimed = page.getByLabel("Claimed: more than").first();
  await claimed.fill("2");
  await claimed.press("Enter");
  await expect.poll(words).toMatch(/speak against "more than 2 times"/);
  await expect.poll(words).toMatch(/Its first run was entered first/);
});

test("Theory lays both finishes over the momentum limit and the prediction of a stated merit", async () => {
  await screen("Theory");
  await page.getByRole("heading", { level: 1, name: /How close to the ideal/ }).waitFor();
  await page.locator("canvas").first().waitFor();
  const words = () => page.locator("main").innerText();
  await expect.poll(words).toMatch(/Momentum limit/);
  await expect.poll(words).toMatch(/Prediction, static merit/);
  for (const { finish } of FINISHES) await expect.poll(words).toContain(finish);
});

test("Drive tells bollard thrust and current of both finishes in the water, on this motor and pack", async () => {
  await screen("Drive");
  await page.getByRole("heading", { level: 1, name: /What will it pull in the water/ }).waitFor();
  await page.locator("canvas").first().waitFor();
  await answered(page);
  await expect.poll(answer).toMatch(/\d+\.\d+ ± \d\.\d+\sN .* ± \d\.\d+\sA/s);
  const before = await answer();
  await page.getByRole("slider").first().focus();
  await page.keyboard.press("End");
  await expect.poll(answer).not.toBe(before);
});

test("nothing was complained of on the way", () => {
  // Until a propeller is chosen a run has no result.
  expect(complaints.filter(isNoRefusal)).toEqual([]);
});

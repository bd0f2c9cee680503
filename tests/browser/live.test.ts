import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { text } from "node:stream/consumers";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { type FakeStand, fakeSerialPort } from "./fakeSerialPort.ts";
import { connectBrowser } from "./setUp.ts";
import { startWorkbench, type Workbench } from "./workbench.ts";

const LOG = readFileSync(resolve(import.meta.dirname, "../../samples/logs/finish-sanded-1.csv"), "utf8");
const LINES = LOG.split(/(?<=\n)/);
const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");
/** The text of a part of the log, by shares of its lines. */
const part = (from: number, to: number) =>
  LINES.slice(Math.round(from * LINES.length), Math.round(to * LINES.length)).join("");
/** Each pass rests for some times as long as it took, and the machine may be busy. */
const PATIENT = { timeout: 45_000 };

let workbench: Workbench;
let browser: Browser;

beforeAll(async () => {
  workbench = await startWorkbench();
  browser = await connectBrowser();
});

afterAll(async () => {
  await browser.close();
  await workbench.stop();
});

/** A window with the bench, and a stand on its serial port. */
async function newBench(options: BrowserContextOptions = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.addInitScript(fakeSerialPort);
  await page.goto(`${workbench.address}/#/bench`);
  await page.getByRole("button", { name: "Record live" }).waitFor();
  const complaints: string[] = [];
  page.on("pageerror", (error) => complaints.push(error.message));
  return { context, page, complaints };
}

/** The window of the tests that begin and end a recording in it, one after the other. */
let common: Awaited<ReturnType<typeof newBench>> | undefined;

async function bench() {
  common ??= await newBench();
  await common.page.getByRole("button", { name: "Record live" }).waitFor();
  return common;
}

const answer = (page: Page) => page.locator("main [role=status]").first().innerText();
/** Waits until the answer says so; what it says then. */
async function answerOnce(page: Page, says: RegExp): Promise<RegExpExecArray> {
  let found: RegExpExecArray | null = null;
  await expect
    .poll(async () => {
      found = says.exec(await answer(page));
      return found;
    }, PATIENT)
    .not.toBeNull();
  return found!;
}
const lines = (page: Page) => page.locator(".live-source").innerText();
const stand = (page: Page, act: "write" | "unplug", text = "") =>
  page.evaluate(([what, words]) => (window as unknown as { stand: FakeStand }).stand[what](words), [
    act,
    text,
  ] as const);

async function begin(page: Page, name: string, how: "Connect a serial port" | "Wait for lines of a program") {
  await page.getByRole("button", { name: "Record live" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Name of the run").fill(name);
  await dialog.getByRole("button", { name: how }).click();
  await dialog.waitFor({ state: "detached" });
  await page.getByRole("heading", { level: 1, name: /so far/ }).waitFor();
  // What a stand writes into a port that is not open yet is lost.
  if (how === "Connect a serial port") await page.getByText("Reading the port at").waitFor();
}

async function choosePropeller(page: Page) {
  const choice = page.getByLabel("Which propeller is on the stand?");
  await choice.selectOption({ label: "Net propeller, sanded" });
}

/** Ends the recording on show; the run that it became, and its reduction. */
async function kept(page: Page) {
  await page.getByRole("button", { name: "End and keep as a run" }).click();
  await page.getByRole("heading", { level: 1, name: "What does this log say?" }).waitFor();
  return page.evaluate(async () => {
    const [, project, run] = /project=([^&]+)&run=([^&]+)/.exec(location.hash)!;
    const at = `/api/projects/${project}/runs/${run}`;
    const [stored, reduction] = await Promise.all(
      [at, `${at}/reduction`].map(async (path) => (await fetch(path)).json()),
    );
    return { stored, reduction, project: project! };
  });
}

test("lines of a serial port make the picture and the coefficient grow, and the kept run is the one that the file gives", async () => {
  const { page, complaints } = await bench();
  await begin(page, "From a port", "Connect a serial port");
  await choosePropeller(page);
  await expect.poll(() => page.evaluate(() => (window as unknown as { stand: FakeStand }).stand.baudRate)).toBe(115200);
  await expect.poll(() => answer(page), PATIENT).toContain("no line has come yet");
  // Through the rest at the start and a first step: nothing to be said of a coefficient yet.
  await stand(page, "write", part(0, 0.12));
  await expect.poll(() => answer(page), PATIENT).toMatch(/rows so far/);
  await page.locator(".bench-picture canvas").waitFor();
  const shown = async () => {
    await page.locator(".bench-picture").getByRole("button", { name: "Table", exact: true }).click();
    const rows = await page.locator(".bench-picture tbody tr").count();
    await page.locator(".bench-picture").getByRole("button", { name: "Table", exact: true }).click();
    return rows;
  };
  const early = await shown();
  await stand(page, "write", part(0.12, 0.45));
  const [, before] = await answerOnce(
    page,
    /thrust coefficient so far is 0\.\d+ ± 0\.\d+, from (\d) plateaus; the zero at the end is still missing/,
  );
  await expect.poll(shown, PATIENT).toBeGreaterThan(early);
  // Cut in the middle of a line, as a port does.
  const cut = part(0, 0.45).length + 1234;
  await stand(page, "write", LOG.slice(part(0, 0.45).length, cut));
  await stand(page, "write", LOG.slice(cut));
  const [, after] = await answerOnce(page, /from (\d+) plateaus.*the zero is there before and after/s);
  expect(Number(after)).toBeGreaterThan(Number(before));
  await expect.poll(() => lines(page), PATIENT).toMatch(/lines received, .* lines kept by the workbench\./);
  const { stored, reduction, project } = await kept(page);
  expect(stored.document).toMatchObject({ name: "From a port", file: { sha256: sha256(LOG), size: LOG.length } });
  const form = new FormData();
  form.append("file", new File([LOG], stored.document.file.name));
  const runs = `${workbench.address}/api/projects/${project}/runs`;
  const dropped = await (await fetch(runs, { method: "POST", body: form })).json();
  const { version, document, id } = dropped.run;
  const changed = { ...document, propellerId: stored.document.propellerId };
  await fetch(`${runs}/${id}`, {
    method: "PUT",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ version, document: changed }),
  });
  expect(await (await fetch(`${runs}/${id}/reduction`)).json()).toEqual(reduction);
  expect(complaints).toEqual([]);
});

test("lines that a program posts while the page is open are shown as they come", async () => {
  const { page } = await bench();
  await begin(page, "From a program", "Wait for lines of a program");
  await choosePropeller(page);
  await page.getByText("Lines from a program").click();
  const command = await page.locator(".live-command code").first().innerText();
  const address = /http:\S+\/lines/.exec(command)![0];
  let sentLines = 0;
  for (const text of [part(0, 0.3), part(0.3, 0.6)]) {
    expect((await fetch(address, { method: "POST", body: text })).status).toBe(200);
    sentLines += text.split("\n").length - 1;
    const spaced = sentLines.toLocaleString("en").replace(",", "\u202f");
    await expect.poll(() => lines(page), PATIENT).toContain(`${spaced} lines kept by the workbench`);
  }
  await expect.poll(() => answer(page), PATIENT).toMatch(/thrust coefficient so far/);
  await page.getByRole("button", { name: "Discard" }).click();
  await page.getByRole("heading", { level: 1, name: "What does this log say?" }).waitFor();
  await page.keyboard.press("Control+z");
  await expect.poll(() => answer(page), PATIENT).toMatch(/thrust coefficient so far/);
  expect((await kept(page)).stored.document.file.sha256).toBe(sha256(part(0, 0.6)));
});

test("a port that is lost is told, and connecting again goes on with the same recording", async () => {
  const { page } = await bench();
  await begin(page, "Pulled cable", "Connect a serial port");
  await stand(page, "write", part(0, 0.2));
  await expect.poll(() => lines(page), PATIENT).toContain("Last line");
  await stand(page, "unplug");
  await expect.poll(() => lines(page), PATIENT).toContain("The port was lost.");
  await page.getByRole("button", { name: "Connect again" }).click();
  await expect.poll(() => lines(page), PATIENT).toContain("Reading the port at");
  await stand(page, "write", part(0.2, 0.4));
  const spaced = (part(0, 0.4).split("\n").length - 1).toLocaleString("en").replace(",", "\u202f");
  await expect.poll(() => lines(page), PATIENT).toContain(`${spaced} lines kept by the workbench`);
  expect((await kept(page)).stored.document.file.sha256).toBe(sha256(part(0, 0.4)));
});

test("while the workbench does not answer lines wait in the browser, through a reload of the page, and none is lost or doubled", async () => {
  const { page } = await bench();
  await begin(page, "Dropped connection", "Connect a serial port");
  await stand(page, "write", part(0, 0.2));
  await expect.poll(() => lines(page), PATIENT).toMatch(/[1-9]\d* lines kept by the workbench/);
  await expect
    .poll(async () => (await lines(page)).match(/(\S+) lines received, \1 lines kept/), PATIENT)
    .not.toBeNull();
  await page.route("**/lines?*", (route) => route.abort());
  await stand(page, "write", part(0.2, 0.3));
  await stand(page, "write", part(0.3, 0.4));
  await expect.poll(() => lines(page), PATIENT).toMatch(/The workbench does not answer\..*bytes wait in this browser/);
  await page.reload();
  await page.getByRole("heading", { level: 1, name: /so far/ }).waitFor();
  await expect.poll(() => lines(page), PATIENT).toMatch(/bytes wait in this browser/);
  await page.unroute("**/lines?*");
  await expect
    .poll(async () => (await lines(page)).match(/(\S+) lines received, \1 lines kept/), PATIENT)
    .not.toBeNull();
  expect((await kept(page)).stored.document.file.sha256).toBe(sha256(part(0, 0.4)));
});

test("where another program wrote into the recording meanwhile, unsent lines are never mixed in: they can be saved, and only then removed", async () => {
  const { page } = await bench();
  await begin(page, "Two writers", "Connect a serial port");
  await stand(page, "write", part(0, 0.1));
  await expect
    .poll(async () => (await lines(page)).match(/([1-9]\S*) lines received, \1 lines kept/), PATIENT)
    .not.toBeNull();
  await page.getByText("Lines from a program").click();
  const address = /http:\S+\/lines/.exec(await page.locator(".live-command code").first().innerText())![0];
  await page.route("**/lines?*", (route) => route.abort());
  await stand(page, "write", part(0.1, 0.2));
  await expect.poll(() => lines(page), PATIENT).toMatch(/bytes wait in this browser/);
  expect((await fetch(address, { method: "POST", body: "9,9,9\n" })).status).toBe(200);
  await page.reload();
  await page.getByRole("heading", { level: 1, name: /so far/ }).waitFor();
  await page.unroute("**/lines?*");
  await expect.poll(() => lines(page), PATIENT).toMatch(/bytes could not be sent and wait in this browser\./);
  const remove = page.getByRole("button", { name: "Remove them from this browser" });
  expect(await remove.count()).toBe(0);
  const save = page.getByRole("button", { name: "Save the unsent lines" });
  const [saved] = await Promise.all([page.waitForEvent("download"), save.click()]);
  expect(await text(await saved.createReadStream())).toBe(part(0.1, 0.2));
  await remove.click();
  await expect.poll(() => lines(page), PATIENT).not.toMatch(/could not be sent/);
  await page.reload();
  await page.getByRole("heading", { level: 1, name: /so far/ }).waitFor();
  expect(await lines(page)).not.toMatch(/could not be sent/);
  expect((await kept(page)).stored.document.file.sha256).toBe(sha256(`${part(0, 0.1)}9,9,9\n`));
});

test("a recording that a program ends is on show as the run that it became, and lines after its end can be saved", async () => {
  const { page } = await bench();
  await begin(page, "Ended elsewhere", "Connect a serial port");
  await stand(page, "write", part(0, 0.4));
  await expect
    .poll(async () => (await lines(page)).match(/([1-9]\S*) lines received, \1 lines kept/), PATIENT)
    .not.toBeNull();
  await page.getByText("Lines from a program").click();
  const address = /http:\S+(?=\/lines)/.exec(await page.locator(".live-command code").first().innerText())![0];
  await page.route("**/lines?*", (route) => route.abort());
  await stand(page, "write", part(0.4, 0.5));
  await expect.poll(() => lines(page), PATIENT).toMatch(/bytes wait in this browser/);
  expect((await fetch(`${address}/end`, { method: "POST" })).status).toBe(201);
  await page.getByText("Ended elsewhere has ended and is a run now").waitFor();
  await expect
    .poll(() => page.locator('[aria-label="Runs"] [aria-current=true]').innerText())
    .toContain("Ended elsewhere");
  await page.unroute("**/lines?*");
  const left = page.locator(".live-stranded");
  const save = left.getByRole("button", { name: "Save the unsent lines" });
  const [saved] = await Promise.all([page.waitForEvent("download"), save.click()]);
  expect(await text(await saved.createReadStream())).toBe(part(0.4, 0.5));
  await left.getByRole("button", { name: "Remove them from this browser" }).click();
  await left.waitFor({ state: "detached" });
});

test("a recording that was left behind is offered when the bench is opened again", async () => {
  const first = await newBench();
  await begin(first.page, "Left behind", "Connect a serial port");
  await stand(first.page, "write", part(0, 0.1));
  await expect.poll(() => lines(first.page), PATIENT).toMatch(/[1-9]\d* lines kept by the workbench/);
  await first.context.close();
  const { page, context } = await newBench();
  await page
    .getByRole("navigation", { name: "Recordings" })
    .getByRole("button", { name: /Left behind/ })
    .click();
  await page.getByRole("heading", { level: 1, name: /so far/ }).waitFor();
  await expect.poll(() => lines(page), PATIENT).toContain("No port is connected. Lines can go on from here");
  await page.getByRole("button", { name: "Discard" }).click();
  await expect.poll(() => page.getByText("Left behind", { exact: true }).count()).toBe(0);
  await context.close();
});

test("a browser without serial ports says so and offers the program", async () => {
  const page = await browser.newPage();
  await page.addInitScript(() => Object.defineProperty(navigator, "serial", { value: undefined }));
  await page.goto(`${workbench.address}/#/bench`);
  await page.getByRole("button", { name: "Record live" }).click();
  const dialog = page.getByRole("dialog");
  await expect.poll(() => dialog.innerText()).toContain("offers no serial ports");
  expect(await dialog.getByRole("button", { name: "Connect a serial port" }).count()).toBe(0);
  expect(await dialog.innerText()).toMatch(/guard/);
  await page.close();
});

test("the screen of a recording meets WCAG 2.2 AA by the rules of axe, light and dark, and fits a telephone", async () => {
  const { page, context } = await newBench({ colorScheme: "light", bypassCSP: true });
  await begin(page, "Looked at", "Connect a serial port");
  await choosePropeller(page);
  await stand(page, "write", part(0, 0.5));
  await expect.poll(() => answer(page), PATIENT).toMatch(/thrust coefficient so far/);
  await page.getByText("Lines from a program").click();
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await violationsOf(page), colorScheme).toEqual([]);
  }
  expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity/);
  await page.setViewportSize({ width: 390, height: 900 });
  // The picture is drawn anew for the narrow window first.
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth), PATIENT).toBeLessThanOrEqual(390);
  await context.close();
});

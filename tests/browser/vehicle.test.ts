import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Download, Page } from "playwright-core";
import { beforeAll, describe, expect, test } from "vitest";
import type { VehicleAnswer, VehicleRequest } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { runCli } from "../cli/runCli.ts";
import { violationsOf } from "./axe.ts";
import { KeyboardWalk } from "./keyboardWalk.ts";
import { answered, type OpenPage, servedPages, unfoldAll } from "./setUp.ts";

const { keep, address } = servedPages();
/** An answer takes seconds, and more where several such tests share two cores. */
const PATIENCE = 240_000;
const WAIT = { timeout: 90_000 };

/** One page for all tests, that goes on from where the last one left it. */
let opened: OpenPage;
let page: Page;
const NAME = "Dabchick, as built";
/** All that the page asked the workbench, and the last that it asked of the first vehicle. */
const questions: VehicleRequest[] = [];
const asked = () => questions.findLast(({ vehicle }) => vehicle.name === NAME)!;

beforeAll(async () => {
  // Begun beside the overview, so that what it asks is seen from the first question on.
  opened = await keep("parts", { bypassCSP: true });
  page = opened.page;
  page.setDefaultTimeout(WAIT.timeout);
  page.on("request", (request) => {
    if (request.url().endsWith("/api/compute/vehicle")) questions.push(request.postDataJSON());
  });
  await page.getByRole("link", { name: "Overview", exact: true }).click();
}, PATIENCE);

/** What the interface answers to the question that the page asked. */
async function answerOfInterface(question: VehicleRequest): Promise<VehicleAnswer> {
  const reply = await fetch(`${address()}/api/compute/vehicle`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(question),
  });
  expect(reply.status).toBe(200);
  return reply.json();
}

const answer = () => page.locator(".screen > .answer").innerText();
const fold = (id: string) => page.locator(`#vehicle-${id}`);
const open = async (id: string) => {
  await fold(id).locator("> summary").click();
  return fold(id);
};

async function saved(act: () => Promise<void>): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download") as Promise<Download>, act()]);
  const path = join(temporaryFolder(), download.suggestedFilename());
  await download.saveAs(path);
  return readFileSync(path, "utf8");
}

describe("from the overview to the vehicle", () => {
  test(
    "the overview tells what the vehicles do, what stands of the job, and leads to the limiting part",
    async () => {
      await page.locator(".overview-vehicles[aria-busy=false]").waitFor(WAIT);
      const first = page.locator(".overview-vehicle").first();
      const told = await first.innerText();
      expect(told).toMatch(/Top speed ahead\s+\d\.\d+ ± \d\.\d+.m\/s/);
      expect(told).toMatch(/What it must do: .*(margin|Misses).* sure/s);
      expect(await answer()).toMatch(/“Dabchick, as built” goes ahead at \d\.\d+ ± \d\.\d+/);
      const stages = page.getByRole("navigation", { name: "From log to report" }).getByRole("link");
      const names = ["Log", "Variants", "Drive", "Shortlist", "Vehicle", "Report"];
      expect((await stages.allInnerTexts()).map((text) => /[A-Z]\w+/.exec(text)?.[0])).toEqual(names);
      expect(await violationsOf(page)).toEqual([]);
      await first.getByRole("link", { name: "See that part" }).click();
      await page.locator("details[id^=build-][open]").waitFor(WAIT);
      await answered(page);
    },
    PATIENCE,
  );

  test(
    "the speed on the screen is that of the interface, each demand has its verdict and a line back to what limits it",
    async () => {
      const { sentence, motions, requirement, headings } = await answerOfInterface(asked());
      await expect.poll(answer, WAIT).toBe(sentence);
      const { value } = motions.find(({ way }) => way === "ahead")!.speed!;
      expect(sentence).toContain(value.toFixed(2));
      // The same vehicle as a file, by the command line.
      const path = join(temporaryFolder(), "vehicle.json");
      const save = page.getByRole("button", { name: "Save the vehicle as JSON" });
      writeFileSync(path, await saved(() => save.click()));
      const { stdout } = await runCli("vehicle", "--file", path, "--json");
      expect(JSON.parse(stdout).motions.find(({ way }: { way: string }) => way === "ahead").speed.value).toBe(value);
      const rows = fold("requirement").locator("tbody tr");
      await expect.poll(() => rows.count(), WAIT).toBe(requirement!.demands.length);
      const limited = requirement!.demands.findIndex(({ limitedBy }) => limitedBy !== null);
      const part = rows.nth(limited).locator(".limit-part");
      await part.click();
      await page.locator("details[id^=build-][open] > summary:focus").waitFor(WAIT);
      const card = await open("headings");
      await expect.poll(() => card.innerText(), WAIT).toContain(headings!.sentence);
      await expect.poll(() => card.locator(".polar-speed, .polar-held").count()).toBe(2);
    },
    PATIENCE,
  );

  test(
    "a slider of the scenario changes the answer, and meanwhile the old one says that it is old",
    async () => {
      const before = await answer();
      const slider = page.getByRole("slider", { name: /^Current/ });
      await slider.fill("0.6");
      await page.locator(".vehicle-behind").waitFor(WAIT);
      await answered(page);
      expect(asked().vehicle.scenario.currentSpeed).toBe(0.6);
      await expect.poll(answer, WAIT).not.toBe(before);
      await expect.poll(() => fold("headings").innerText(), WAIT).toContain("0.600 m/s");
      await page.getByRole("button", { name: "Back to the one that is kept" }).click();
      await expect.poll(answer, WAIT).toBe(before);
    },
    PATIENCE,
  );
});

describe("the sections of the vehicle", () => {
  test(
    "the other vehicle stands beside the first, with a word on each number whether they differ",
    async () => {
      const card = await open("compare");
      await expect.poll(() => card.locator(".vehicle-told").innerText(), WAIT).toMatch(/“Dabchick.*” .*(differ|apart)/);
      const speeds = card.getByRole("row", { name: /^Speed ahead/ });
      await expect.poll(() => speeds.innerText()).toMatch(/± .*± .*± .*m\/s, (differs|not told apart)/s);
    },
    PATIENCE,
  );

  test(
    "the mission is told leg by leg, holding in a current has a key, and the tether is drawn with its pull",
    async () => {
      const endurance = await open("endurance");
      const legs = endurance.getByLabel("The mission, leg by leg").locator("tbody tr");
      await expect.poll(() => legs.count(), WAIT).toBe(asked().vehicle.mission!.legs.length);
      await expect.poll(() => endurance.locator(".holding-key").innerText(), WAIT).toMatch(/W.*W\s+can not be held/s);
      const tether = await open("tether");
      await tether.locator("canvas").first().waitFor(WAIT);
      const pull = tether.getByRole("row", { name: /^Pull on the vehicle/ });
      await expect.poll(() => pull.innerText(), WAIT).toMatch(/±.*N/);
    },
    PATIENCE,
  );

  test(
    "the layout is saved for a control system as CSV and as JSON, each complete",
    async () => {
      const card = await open("layout");
      const { thrusters } = asked().vehicle;
      const json = JSON.parse(await saved(() => card.getByRole("button", { name: "Save as JSON" }).click()));
      expect(json.thrusters).toEqual(thrusters.map(({ name }) => name));
      expect(json.limits.forward.every((force: number) => force > 0)).toBe(true);
      const csv = await saved(() => card.getByRole("button", { name: "Save as CSV" }).click());
      const [head, ...rows] = csv.split(/\r?\n/);
      for (const { name } of thrusters) expect(head).toContain(name);
      expect(rows.filter((row) => row !== "").length).toBeGreaterThanOrEqual(json.rows.length);
      expect(csv).not.toMatch(/NaN|Infinity|undefined/);
    },
    PATIENCE,
  );

  test(
    "the main controls are reached from the keyboard alone, with the focus to be seen",
    async () => {
      await page.evaluate(() => {
        for (const one of document.querySelectorAll<HTMLDetailsElement>("main details")) one.open = false;
        document.getElementById("question")!.focus();
      });
      const keys = new KeyboardWalk(page);
      await keys.to(/^Vehicle$/);
      await keys.to(/^Current/);
      const before = await page.getByRole("slider", { name: /^Current/ }).inputValue();
      await page.keyboard.press("ArrowRight");
      expect(await page.getByRole("slider", { name: /^Current/ }).inputValue()).not.toBe(before);
      await keys.press(/^Back to the one that is kept$/);
      await keys.press(/^What the thrusters can push and turn$/);
      await keys.arriveAt(/^What the thrusters can push and turn$/);
      await fold("layout").locator(".layout-turn").waitFor(WAIT);
      await keys.to(/^Layout of \d thrusters$/);
      const drawn = () => fold("layout").locator(".layout-thrust").first().getAttribute("d");
      const first = await drawn();
      await page.keyboard.press("ArrowUp");
      await expect.poll(drawn).not.toBe(first);
      await keys.to(/^Save as JSON$/);
      expect(keys.unseen).toEqual([]);
    },
    PATIENCE,
  );

  test.each([
    { width: 1440, colorScheme: "light" },
    { width: 390, colorScheme: "dark" },
  ] as const)(
    "every section of the answer fits $width px and meets WCAG 2.2 AA, $colorScheme",
    async ({ width, colorScheme }) => {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: 900 });
      await unfoldAll(page, "details[id^=vehicle-]");
      expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|\bnull\b|Infinity|e\+\d/);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await violationsOf(page)).toEqual([]);
      expect(opened.complaints).toEqual([]);
    },
    PATIENCE,
  );
});

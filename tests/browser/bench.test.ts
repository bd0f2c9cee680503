import type { Locator, Page } from "playwright-core";
import { beforeAll, expect, test } from "vitest";
import { BROKEN_LOGS } from "../unit/brokenLogs.ts";
import { chooseFiles, servedPages, showRun } from "./setUp.ts";

const { open, keep } = servedPages();

let bench: Page;

/** One window for the runs of the demonstration; each test has a run of its own. */
beforeAll(async () => {
  bench = (await keep("bench")).page;
});

async function benchOf(run: RegExp): Promise<Page> {
  await showRun(bench, run);
  return bench;
}

async function unfold(page: Page, section: string): Promise<void> {
  await page.getByRole("navigation", { name: "Sections of this run" }).getByRole("button", { name: section }).click();
}

async function undo(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Undo: / }).click();
}

const row = (page: Page, name: string): Locator =>
  page.locator("#bench-plateaus tr").filter({ has: page.getByRole("rowheader", { name, exact: true }) });

/** Where on the canvas, from its middle on, the pointer turns into the sign for dragging an edge. */
async function edgeOn(page: Page, canvas: Locator): Promise<{ readonly x: number; readonly y: number }> {
  const box = (await canvas.boundingBox())!;
  const y = box.y + box.height / 3;
  for (let x = box.x + box.width / 2; x < box.x + box.width - 40; x += 4) {
    await page.mouse.move(x, y);
    if ((await canvas.evaluate((one: HTMLElement) => one.style.cursor)) === "ew-resize") return { x, y };
  }
  throw new Error("no edge can be dragged");
}

test("a plateau is moved by its edge, by keyboard and by pointer, and undo puts it back", async () => {
  const page = await benchOf(/^Pitch ratio 0\.8/);
  await unfold(page, "Plateaus");
  const found = () => row(page, "Plateau 3").locator("td").nth(-4).textContent();
  const before = await found();
  expect(before).toMatch(/change points/);

  await page.getByText("Edges as numbers").first().click();
  const start = page.getByLabel("Plateau 3, start, s");
  const typed = Number(await start.inputValue()) + 0.7;
  await start.fill(typed.toFixed(3));
  await start.press("Enter");
  await expect.poll(found).toBe("moved by hand");
  await undo(page);
  await expect.poll(found).toBe(before);

  const canvas = page.locator("#bench-picture canvas").first();
  const { x, y } = await edgeOn(page, canvas);
  await page.mouse.down();
  await page.mouse.move(x + 4, y);
  await page.mouse.move(x + 6, y);
  await page.mouse.up();
  await page.getByText(/^Moved (plateau|tare) \d+$/).waitFor();
  await undo(page);
  await page.getByText(/^Taken back: Moved/).waitFor();
});

test("a plateau is split, merged again, and left out only with a reason; each act can be undone", async () => {
  const page = await benchOf(/^Pitch ratio 1\.0(?! under)/);
  await unfold(page, "Plateaus");
  const names = page.locator("#bench-plateaus tbody th");
  const count = await names.count();

  await page.getByRole("button", { name: "Split Plateau 2" }).click();
  await page.getByRole("button", { name: "Split", exact: true }).click();
  await expect.poll(() => names.count()).toBe(count + 1);
  await page.getByRole("button", { name: "Merge with next: Plateau 2" }).click();
  await expect.poll(() => names.count()).toBe(count);
  await expect.poll(() => row(page, "Plateau 2").textContent()).toContain("merged by hand");
  await undo(page);
  await undo(page);
  await expect.poll(() => row(page, "Plateau 2").textContent()).toContain("change points");

  await page.getByRole("button", { name: "Leave out Plateau 2" }).click();
  const leave = page.getByRole("button", { name: "Leave out", exact: true });
  await expect.poll(() => leave.isDisabled()).toBe(true);
  await page.getByLabel("Why Plateau 2 is left out").fill("air drawn from the surface");
  await leave.click();
  await expect.poll(() => row(page, "Plateau 2").textContent()).toContain("no: air drawn from the surface");
  await page.getByRole("button", { name: "Put Plateau 2 back" }).click();
  await page.getByRole("button", { name: "Leave out Plateau 2" }).waitFor();
  await undo(page);
  await expect.poll(() => row(page, "Plateau 2").textContent()).toContain("no: air drawn from the surface");
});

test("a zero of the scale is removed, added, refused where it overlaps, drawn through by one line, and undone", async () => {
  const page = await benchOf(/^Net propeller sanded.*mounting 3/);
  await unfold(page, "Zero of the scale");
  const windows = page.locator("#bench-tare li");
  const placeOf = async (which: Locator) =>
    /, ([\d.]+) to ([\d.]+)/
      .exec((await which.textContent())!)!
      .slice(1)
      .map(Number) as [number, number];
  const count = await windows.count();
  expect(count).toBeGreaterThan(1);
  const [, end] = await placeOf(windows.last());
  const add = page.locator("#bench-tare form");
  const fill = async (from: number, to: number) => {
    await add.getByLabel(/^Add a tare window from/).fill(from.toFixed(2));
    await add.getByLabel(/^to/).fill(to.toFixed(2));
  };

  await page.getByRole("button", { name: `Remove Tare ${count}` }).click();
  await expect.poll(() => windows.count()).toBe(count - 1);
  await fill(end - 3, end - 1);
  await add.getByRole("button").click();
  await expect.poll(() => windows.count()).toBe(count);
  await expect.poll(() => placeOf(windows.last())).toEqual([end - 3, end - 1].map((edge) => expect.closeTo(edge, 1)));

  const [first] = await placeOf(windows.first());
  await fill(first, first + 1);
  await expect.poll(() => add.textContent()).toContain("It overlaps tare 1");
  await expect.poll(() => add.getByRole("button").isDisabled()).toBe(true);

  const line = page.getByRole("radio", { name: "one straight line through all windows" });
  await line.check();
  await page.getByText("Tare: one straight line through all windows", { exact: true }).waitFor();
  await expect.poll(() => line.isChecked()).toBe(true);
  for (let act = 0; act < 3; act++) await undo(page);
  await expect.poll(() => line.isChecked()).toBe(false);
  await expect.poll(async () => (await placeOf(windows.last()))[1]).toBe(end);
});

test("the quality card says what asks for a look, says it once, and a stated fact settles a check", async () => {
  const page = await benchOf(/^Net propeller sanded.*mounting 1/);
  const card = page.locator("#bench-quality");
  await expect.poll(() => card.getByRole("status").textContent()).toMatch(/./);
  await expect.poll(() => card.textContent()).toContain("Blade Reynolds number");
  expect(await page.locator("#bench-warnings").textContent()).not.toMatch(/Reynolds/);
  const immersion = card.locator("li").filter({ hasText: "Immersion." });
  await expect.poll(() => immersion.textContent()).toContain("Not known");
  await card.getByText("What only you can say of the stand").click();
  await card.getByLabel(/^Depth of the shaft/).fill("300 mm");
  await card.getByLabel(/^Depth of the shaft/).press("Enter");
  await expect.poll(() => immersion.textContent()).toMatch(/Passed.*Immersion.*3\.9/s);
  await undo(page);
  await expect.poll(() => immersion.textContent()).toContain("Not known");
});

test("a tow shows its curves against the advance ratio, and the order of the curves can be stated", async () => {
  const page = await benchOf(/under a towing carriage/);
  const panel = page.locator("#bench-advance");
  await expect.poll(() => panel.textContent()).toMatch(/the lowest that the corrected information criterion finds/);
  await expect.poll(() => panel.locator("canvas").count()).toBe(1);
  await panel.getByLabel("Order of the curves").selectOption("1");
  await expect.poll(() => panel.textContent()).toContain("K_T(J): order 1, as stated.");
  await undo(page);
  await expect.poll(() => panel.textContent()).not.toContain("as stated");
});

test("speeds that no column holds are given by spans of time, changed, refused where they overlap, and undone", async () => {
  const page = await benchOf(/^Pitch ratio 1\.2/);
  await unfold(page, "On the stand");
  await page.getByText("Speeds that changed during the run").click();
  await page.getByRole("button", { name: /^Make a span of each of the \d+ plateaus/ }).click();
  const spans = page.locator(".bench-speeds tbody tr");
  await spans.first().waitFor();
  const count = await spans.count();
  for (const span of ["span 2", "span 3"]) {
    await page.getByLabel(`Speed of ${span}`).fill("0.4 m/s");
    await page.getByLabel(`Speed of ${span}`).press("Enter");
    await page.getByText(`Changed speed ${span}`, { exact: true }).waitFor();
  }
  await page.locator("#bench-advance").waitFor();
  await page.getByLabel("Start of span 2").fill("0 s");
  await page.getByLabel("Start of span 2").press("Enter");
  await page.getByText(/^It overlaps .* a plateau has one speed\.$/).waitFor();
  await page.getByRole("button", { name: "Remove span 1", exact: true }).click();
  await expect.poll(() => spans.count()).toBe(count - 1);
  await undo(page);
  await expect.poll(() => spans.count()).toBe(count);
  await undo(page);
  await expect.poll(() => page.locator("#bench-advance").count()).toBe(0);
  await undo(page);
  await undo(page);
  await expect.poll(() => spans.count()).toBe(0);
});

test("the columns of the second log are changed like those of the first: role, unit and sign, with undo", async () => {
  const { page } = await open("bench");
  const log = BROKEN_LOGS.find(({ name }) => name === "two logs apart")!;
  const file = (name: string, bytes: Uint8Array | string) => ({
    name,
    mimeType: "text/csv",
    buffer: Buffer.from(bytes),
  });
  await chooseFiles(page, file("stand.csv", log.bytes));
  await page.getByText("Columns of stand.csv").waitFor();
  await page.getByText("Add the electrical log of the same run").click();
  await chooseFiles(page, file("meter.csv", log.companion!), 1);
  await page.getByText("Columns of meter.csv").click();
  const columns = page.getByRole("region", { name: "Columns of the electrical log" });
  const unit = columns.getByRole("combobox", { name: /^Unit of .*current/i }).first();
  const sign = columns.getByRole("combobox", { name: /^Sign of .*current/i }).first();
  const store = page.getByRole("button", { name: "Store the columns of the electrical log" });
  const before = await unit.inputValue();
  await expect.poll(() => store.isDisabled()).toBe(true);
  await unit.selectOption("mA");
  await sign.selectOption("turned");
  await store.click();
  await page.getByText(/It holds .*current in mA/i).waitFor();
  await expect.poll(() => sign.inputValue()).toBe("turned");
  await undo(page);
  await expect.poll(() => unit.inputValue()).toBe(before);
  await expect.poll(() => sign.inputValue()).toBe("kept");
});

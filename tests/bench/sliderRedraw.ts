import type { CDPSession, Page } from "playwright-core";
import { launchBrowser, startWorkbench } from "../browser/workbench.ts";
import type { BenchRow } from "./benchRow.ts";

const STEPS = 40;

/** Main-thread seconds that the page has spent in tasks so far, as Chromium counts them. */
async function taskSeconds(session: CDPSession): Promise<number> {
  const { metrics } = await session.send("Performance.getMetrics");
  return metrics.find(({ name }) => name === "TaskDuration")!.value;
}

/** Milliseconds of main-thread work for one step of the first slider of a screen: recompute and redraw. */
async function slideCost(page: Page, address: string): Promise<number> {
  await page.goto(address);
  const slider = page.locator("input[type=range]").first();
  await slider.waitFor();
  await page.locator("canvas").first().waitFor();
  await page.waitForTimeout(1500);
  const session = await page.context().newCDPSession(page);
  await session.send("Performance.enable");
  await slider.focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowLeft");
  await page.waitForTimeout(500);
  const before = await taskSeconds(session);
  for (let i = 0; i < STEPS; i++) {
    await page.keyboard.press(i % 2 === 0 ? "ArrowRight" : "ArrowLeft");
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
  await page.waitForTimeout(300);
  return ((await taskSeconds(session)) - before) * (1000 / STEPS);
}

export async function measureSliders(): Promise<BenchRow[]> {
  const workbench = await startWorkbench();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    const rows: BenchRow[] = [];
    for (const screen of ["drive", "theory"]) {
      const cost = await slideCost(page, `${workbench.address}/#/${screen}`);
      rows.push({
        what: `main-thread work of one slider step on the ${screen} screen of the demo`,
        measured: `${cost.toFixed(1)} ms`,
        wanted: "under 50 ms",
        met: cost < 50,
      });
    }
    return rows;
  } finally {
    await browser.close();
    await workbench.stop();
  }
}

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { servedPages } from "./setUp.ts";

const { open } = servedPages();

test("a picture saved from a dark page is dark on white, as paper wants it", async () => {
  const { page } = await open("variants", { colorScheme: "dark" });
  const download = page.waitForEvent("download");
  await page.getByRole("button", { name: "PNG" }).first().click();
  const bytes = readFileSync(await (await download).path()).toString("base64");
  const { corner, darkest } = await page.evaluate(async (base64) => {
    const file = new Blob([Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))], { type: "image/png" });
    const picture = await createImageBitmap(file);
    const canvas = new OffscreenCanvas(picture.width, 80);
    const pen = canvas.getContext("2d")!;
    pen.drawImage(picture, 0, 0);
    // The strip at the top holds the title alone.
    const { data } = pen.getImageData(0, 0, picture.width, 80);
    return { corner: data[0]!, darkest: data.reduce((least, value) => Math.min(least, value), 255) };
  }, bytes);
  expect(corner).toBe(255);
  expect(darkest).toBeLessThan(60);
});

test("no screen is wider than an upright sheet of paper, but for the plateaus, which lie on their side", async () => {
  const { page } = await open("overview");
  // A4 less margins of 12 mm, and less the same when it lies on its side.
  const [upright, onSide] = [703, 1032];
  await page.emulateMedia({ media: "print" });
  await page.setViewportSize({ width: upright, height: 994 });
  for (const screen of ["Overview", "Parts", "Bench", "Variants", "Drive"]) {
    await page.evaluate((name) => {
      location.hash = `#/${name.toLowerCase()}`;
    }, screen);
    await page.waitForLoadState("networkidle");
    await page.locator("main h1").waitFor();
    const width = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(width, screen).toBeLessThanOrEqual(screen === "Bench" ? onSide : upright);
  }
});

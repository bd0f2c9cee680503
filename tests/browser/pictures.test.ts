import { buffer } from "node:stream/consumers";
import { expect, test } from "vitest";
import { QUESTIONS, servedPages, visit } from "./setUp.ts";

const { open } = servedPages();

test("a picture saved from a dark page is dark on white, as paper wants it", async () => {
  const { page } = await open("variants", { colorScheme: "dark" });
  const save = page.getByRole("button", { name: "PNG" }).first();
  const [download] = await Promise.all([page.waitForEvent("download"), save.click()]);
  const bytes = (await buffer(await download.createReadStream())).toString("base64");
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
  for (const { name, question } of QUESTIONS.filter((one) => one.name !== "theory")) {
    // Of the report only the sheet is on paper.
    if (name === "report") {
      await page.evaluate(() => {
        location.hash = "#/report";
      });
      await page.locator("#report-sheet").waitFor();
    } else await visit(page, name, question);
    // Pictures follow the width of the sheet a little later.
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth), { message: name })
      .toBeLessThanOrEqual(name === "bench" ? onSide : upright);
  }
});

import { expect, test } from "vitest";
import { answered, servedPages } from "./setUp.ts";

const { open, address } = servedPages();

const TABLE = ["mass (g)\treading (gf)", "0\t0", "500\t498", "1000\t995", "1500\t1494", "2000\t2000"];
const BACK = ["1500\t1512", "1000\t1016", "500\t513", "0\t3"];

test("an instrument of the demonstration says how many runs use it, and can not be deleted under them", async () => {
  const { page } = await open("parts");
  const card = page.locator(".instruments li").first();
  await expect.poll(() => card.textContent()).toMatch(/1 gf of reading is .* N ± [\s\S]*In 6 runs\./);
  await expect.poll(() => card.getByRole("button", { name: /^Delete/ }).isDisabled()).toBe(true);
});

test("a pasted dead-weight table is judged at once, kept, and chosen for a run, which it reduces anew", async () => {
  const { page } = await open("parts");
  await page.getByRole("button", { name: "Add an instrument" }).click();
  await page.getByLabel("Name", { exact: true }).fill("Scale under the lever");
  await page.getByLabel("Applied, row 1").evaluate(
    (cell, text) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData("text/plain", text);
      cell.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
    },
    [...TABLE, ...BACK].join("\n"),
  );
  const answer = page.locator(".instrument-answer");
  await expect
    .poll(() => answer.textContent())
    .toMatch(/^1 gf of reading is 0\.009\d* N ± .* higher than loading: friction/);
  await expect.poll(() => page.locator("dialog canvas").count()).toBe(2);
  await page.getByRole("button", { name: "Save" }).click();
  await page.getByRole("heading", { name: "Scale under the lever" }).waitFor();

  await page.goto(`${address()}/#/bench`);
  const choice = page.getByLabel("Thrust measured with");
  await choice.waitFor();
  await answered(page);
  // The other runs of the project are being reduced as well: the one that counts names the new instrument.
  const [reduced] = await Promise.all([
    page.waitForResponse(
      async (response) => /\/reduction$/.test(response.url()) && /Scale under the lever/.test(await response.text()),
    ),
    choice.selectOption({ label: "Scale under the lever" }),
  ]);
  expect((await reduced.json()).calibrations).toMatchObject([{ role: "thrust" }]);
});

import { describe, expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { KeyboardWalk } from "./keyboardWalk.ts";
import { answered, servedPages, unfoldAll } from "./setUp.ts";

const { open } = servedPages();
/** Each change is answered anew, which takes its time where several such tests share two cores. */
const PATIENCE = 240_000;
const CARDS = ["body", "drag", "thrusters", "drives", "supply", "tether", "mission", "require", "typed-layout"];

describe("a vehicle is described", () => {
  test(
    "one is added, a position is changed and taken back, a leg is added, and it is deleted and comes back",
    async () => {
      const { page, complaints } = await open("vehicle");
      const vehicles = page.getByLabel("Vehicle", { exact: true });
      await expect.poll(() => vehicles.locator("option").count()).toBe(2);

      await page.getByRole("button", { name: "Add a vehicle" }).click();
      const dialog = page.getByRole("dialog");
      await dialog.getByLabel("Thrusters", { exact: true }).selectOption({ label: "Two ahead and one upright" });
      await dialog.getByLabel("Name").fill("Grebe");
      await dialog.getByRole("button", { name: "Save" }).click();
      // Nothing is guessed in silence: sizes and mass are asked for.
      await dialog.getByText("Needed: length, width and height").waitFor();
      for (const [label, size] of [
        ["Length over all", "450 mm"],
        ["Width", "350 mm"],
        ["Height", "250 mm"],
        ["Mass with the water it encloses", "12 kg"],
      ] as const)
        await dialog.getByLabel(label).fill(size);
      await dialog.getByRole("button", { name: "Save" }).click();
      await dialog.waitFor({ state: "detached" });
      await expect.poll(() => vehicles.locator("option:checked").innerText()).toBe("Grebe");

      await page.locator("#build-thrusters > summary").click();
      const x = page.getByLabel("x of Starboard, mm");
      const before = await x.inputValue();
      await x.fill("-21 cm");
      await x.press("Enter");
      await expect.poll(() => x.inputValue()).toBe("-210");
      await page.locator("#build-thrusters .layout-words").getByText("1 Starboard: 210 mm astern").waitFor();
      await page.locator("#build-thrusters > summary").focus();
      await page.keyboard.press("Control+z");
      await expect.poll(() => x.inputValue()).toBe(before);

      await page.locator("#build-mission > summary").click();
      await page.getByRole("button", { name: "Describe a mission" }).click();
      await page.getByText("4 legs", { exact: false }).waitFor();

      await page.getByRole("button", { name: "Delete it" }).click();
      await expect.poll(() => vehicles.locator("option").count()).toBe(2);
      await page.getByRole("button", { name: "Undo" }).first().click();
      await expect.poll(() => vehicles.locator("option").allInnerTexts()).toContain("Grebe");
      expect(complaints).toEqual([]);
    },
    PATIENCE,
  );

  test(
    "a tow that is pasted is fitted, drawn and kept as the drag ahead",
    async () => {
      const { page } = await open("vehicle");
      await page.locator("#build-drag > summary").click();
      await page.getByLabel("Its drag is").selectOption("fitted");
      const dialog = page.getByRole("dialog");
      // 22.5 N at 1 m/s in 1025 kg/m³ and the square law: C_D A = 2 · 22.5/1025 = 0.0439 m², by hand.
      await dialog
        .getByLabel("Or paste or type a table")
        .fill("speed (m/s), force (N)\n0.5, 5.6\n1, 22.5\n1.5, 50.6\n");
      await dialog.getByText(/C_D A is 0\.0(43|44)/).waitFor();
      await dialog.getByRole("button", { name: "Use this drag" }).click();
      await dialog.waitFor({ state: "detached" });
      await page.locator("#build-drag").getByText("fitted to a tow").first().waitFor();
      await page.locator("#build-drag > summary").focus();
      await page.keyboard.press("Control+z");
      await page.locator("#build-drag").getByText("built up from 7 shapes").waitFor();
    },
    PATIENCE,
  );

  test(
    "the picture is turned and a thruster moved from the keyboard alone, with the focus to be seen",
    async () => {
      const { page } = await open("vehicle");
      const keys = new KeyboardWalk(page);
      await keys.press(/^Thrusters$/);
      await page.locator("#build-thrusters > summary:focus").waitFor();
      await page.locator("#build-thrusters .layout-turn").waitFor();
      await keys.to(/^Layout of 6 thrusters$/);
      const drawn = () => page.locator("#build-thrusters .layout-thrust").first().getAttribute("d");
      const first = await drawn();
      await page.keyboard.press("ArrowRight");
      await expect.poll(drawn).not.toBe(first);
      await keys.fill(/^y of Fore starboard, mm$/, "150");
      await page.keyboard.press("Enter");
      await page.locator("#build-thrusters .layout-words").getByText("160 mm ahead, 150 mm to starboard").waitFor();
      expect(keys.unseen).toEqual([]);
    },
    PATIENCE,
  );

  test(
    "every card fits a wide window and a telephone, and meets WCAG 2.2 AA in both, light and dark",
    async () => {
      const { page, complaints } = await open("vehicle", { colorScheme: "light", reducedMotion: "reduce" });
      for (const card of CARDS) await unfoldAll(page, `#build-${card}`);
      await answered(page);
      expect(await page.locator("main").innerText()).not.toMatch(/\bNaN\b|\bundefined\b|Infinity/);
      for (const [width, colorScheme] of [
        [1440, "light"],
        [390, "dark"],
      ] as const) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        await expect
          .poll(() => page.evaluate(() => document.documentElement.scrollWidth), { message: `${width} px` })
          .toBeLessThanOrEqual(width);
        expect(await violationsOf(page), `${width} px, ${colorScheme}`).toEqual([]);
      }
      expect(complaints).toEqual([]);
    },
    PATIENCE,
  );
});

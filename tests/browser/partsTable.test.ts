import { expect, test } from "vitest";
import { violationsOf } from "./axe.ts";
import { chooseFiles, isNoRefusal, servedPages } from "./setUp.ts";

const { open } = servedPages();

const TABLE =
  "Motor,Kv,R (mΩ),I0 (A),Weight (g),Price,Shelf\nMotor P,300,180,0.4,210,41,B4\nMotor Q,470,85,0.6,190,38,B5\nMotor R,many,85,0.6,190,38,B6\n";

test("a table of motors is asked for the unit of its K_v, imported from the keyboard, and taken back", async () => {
  const { page, complaints } = await open("parts", { bypassCSP: true });
  await page.getByRole("button", { name: "Import motors" }).click();
  await chooseFiles(page, [{ name: "motors.csv", mimeType: "text/csv", buffer: Buffer.from(TABLE) }]);
  const dialog = page.getByRole("dialog");
  const status = dialog.getByRole("status");
  await expect.poll(() => status.textContent()).toContain('The unit of "Kv": rpm/V or rad/(V·s)?');
  const asked = dialog.getByRole("group", { name: /^Kv/ });
  expect(await asked.textContent()).toMatch(/300 to 470 rpm\/V.*usual.*2865 to 4488 rpm\/V.*unusual/);
  expect(await dialog.getByRole("button", { name: "Import", exact: true }).isDisabled()).toBe(true);
  expect(await violationsOf(page)).toEqual([]);

  const press = async (name: string | RegExp, role: "button" | "checkbox", key: string) => {
    await dialog.getByRole(role, { name, exact: true }).focus();
    await page.keyboard.press(key);
  };
  await press("rpm/V", "button", "Enter");
  await expect.poll(() => status.textContent()).not.toContain("The unit of");
  await press("Leave out the row that can not be read", "checkbox", "Space");
  await press(/^Write columns that stand for nothing/, "checkbox", "Space");
  await expect.poll(() => status.textContent()).toBe("Adds 2 motors and leaves out 1 row.");
  await press("Import", "button", "Enter");
  await dialog.waitFor({ state: "detached" });

  const row = page.getByRole("row", { name: /^Motor P/ });
  await expect.poll(() => row.textContent()).toMatch(/Shelf: B4.*300 rpm\/V.*180 mΩ.*210 g/);
  await page.locator("body").press("Control+z");
  await expect.poll(() => row.count()).toBe(0);
  expect(await page.getByRole("row", { name: /^Motor A/ }).count()).toBe(1);
  expect(complaints.filter(isNoRefusal)).toEqual([]);
});

test("a motor whose speed constant looks wrong is asked for with its other readings before it is stored", async () => {
  const { page } = await open("parts", { bypassCSP: true });
  await page.getByRole("button", { name: "Add a motor" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Name").fill("Motor S");
  await dialog.getByLabel(/^Speed constant/).fill("470 rad/(V·s)");
  await dialog.getByLabel(/^Winding resistance/).fill("85 mΩ");
  await dialog.getByLabel(/^No-load current/).fill("0.6 A");
  await dialog.getByRole("button", { name: "Save" }).click();
  await dialog.getByRole("heading", { name: "Are these constants right?" }).waitFor();
  expect(await violationsOf(page)).toEqual([]);
  await dialog.getByRole("button", { name: "Keep as typed" }).waitFor();
  await dialog.getByRole("button", { name: "It is 470 rpm/V" }).click();
  await expect.poll(() => page.getByRole("row", { name: /^Motor S/ }).textContent()).toContain("470 rpm/V");
});

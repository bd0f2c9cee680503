import { resolve } from "node:path";
import { expect, test } from "vitest";
import { KeyboardWalk } from "./keyboardWalk.ts";
import { isNoRefusal, servedPages } from "./setUp.ts";

const LOGS = resolve(import.meta.dirname, "../../samples/logs");
const { open } = servedPages("--no-demo");

test("the whole job is done without a pointer, and the focus can be seen at every step", async () => {
  const { page, complaints } = await open("");
  const keys = new KeyboardWalk(page);
  const answer = () => page.locator("main [role=status]").first().innerText();

  // A project.
  await keys.press(/^Make a project$/);
  await page.getByRole("dialog").waitFor();
  await keys.fill(/^Name/, "By keyboard");
  await keys.fill(/^Water the vehicle works in/, "sea 12C 33");
  await keys.press(/^Make project$/);
  await page.getByRole("dialog").waitFor({ state: "detached" });

  // Both logs, by the file chooser.
  await keys.press(/^Bench$/);
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), keys.press(/^Choose files$/)]);
  const files = ["finish-as-printed-1.csv", "finish-sanded-1.csv"].map((name) => resolve(LOGS, name));
  await chooser.setFiles(files);
  await page.getByRole("button", { name: /^finish-sanded-1/ }).waitFor();
  await page.getByText("Columns of finish-as-printed-1.csv").waitFor();

  // The first propeller is made on the spot, the columns are confirmed.
  await keys.fill(/^Name of the propeller/, "as printed");
  await keys.fill(/^Diameter over the blade tips/, "76 mm");
  await keys.fill(/^Standard uncertainty of the diameter/, "0.1 mm");
  await page.keyboard.press("Enter");
  await page.getByText("Which propeller was on the stand?").waitFor({ state: "detached" });
  await keys.arriveAt(/What does this log say/);
  await keys.press(/^These columns are right$/);
  await expect.poll(answer).toMatch(/thrust coefficient is 0\.\d+/);
  await keys.arriveAt(/What does this log say/);

  // The second run, with a propeller of its own.
  await keys.press(/^finish-sanded-1/);
  await page.getByText("Columns of finish-sanded-1.csv").waitFor();
  await keys.press(/^It is not in the list: make it$/);
  await keys.fill(/^Name of the propeller/, "sanded");
  await keys.fill(/^Diameter over the blade tips/, "76 mm");
  await keys.fill(/^Standard uncertainty of the diameter/, "0.1 mm");
  await page.keyboard.press("Enter");
  await page.getByText("Which propeller was on the stand?").waitFor({ state: "detached" });
  await keys.arriveAt(/What does this log say/);
  await keys.press(/^These columns are right$/);
  await expect.poll(answer).toMatch(/thrust coefficient is 0\.\d+/);
  await keys.arriveAt(/What does this log say/);

  // A plateau is dropped, with its reason, and the focus stays at it.
  await keys.follow(/^Plateaus$/);
  await keys.press(/^Leave out Plateau 2$/);
  await keys.arriveAt(/^Why Plateau 2 is left out$/);
  await page.keyboard.type("still settling");
  await page.keyboard.press("Enter");
  await keys.arriveAt(/^Put Plateau 2 back$/);

  // A point of the picture is read, and the picture zoomed.
  await keys.follow(/^Log over time$/);
  await keys.to(/^Log over time with/);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("+");
  await expect.poll(() => page.locator(".chart-spoken").first().textContent()).toMatch(/^Thrust reading, /);

  // What it comes to.
  await keys.press(/^Variants$/);
  await page.getByRole("heading", { level: 1, name: /How much did/ }).waitFor();
  await expect.poll(answer).toMatch(/times the thrust|told apart/);
  await keys.press(/^Theory$/);
  await page.getByRole("heading", { level: 1, name: /How close to the ideal/ }).waitFor();
  await keys.press(/^Drive$/);
  await page.getByRole("heading", { level: 1, name: /What will it pull in the water/ }).waitFor();
  expect(keys.unseen).toEqual([]);
  expect(complaints.filter(isNoRefusal)).toEqual([]);
}, 180_000);

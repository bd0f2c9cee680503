import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";

test("arrays that nobody holds any more are given back, those that are held stay", () => {
  const alone = new URL("collectedAlone.ts", import.meta.url).pathname;
  const printed = execFileSync(process.execPath, ["--import", "tsx", alone], { encoding: "utf8" });
  const { one, made, after, heldIsWhole } = JSON.parse(printed);
  expect(made).toBeGreaterThan(1.9 * one);
  expect(after).toBeGreaterThan(0.9 * one);
  expect(after).toBeLessThan(1.5 * one);
  expect(heldIsWhole).toBe(true);
});

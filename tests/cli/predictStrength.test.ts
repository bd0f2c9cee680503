import { resolve } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const SECTIONS = resolve(import.meta.dirname, "../../samples/blades/dabchick-76mm.csv");
const BLADE = ["predict", "--geometry", SECTIONS, "--blades", "3", "--rpm", "3000rpm"];

test("predict with a material says where the blade would break first, and what to mind before it is spun", async () => {
  const { code, stdout } = await runCli(...BLADE, "--strength", "nylon 12");
  expect(code).toBe(0);
  expect(stdout).toMatch(/Safety factor \d/);
  expect(stdout).toContain("guard");
  expect(stdout).toContain("common practice, no source");
});

test("layers stacked along the blade make it weaker", async () => {
  const factor = async (...more: string[]) => {
    const { stdout } = await runCli(...BLADE, "--strength", "polylactide", "--json", ...more);
    return JSON.parse(stdout).critical.safetyFactor;
  };
  expect(await factor("--across-layers")).toBeLessThan(0.7 * (await factor()));
});

test("a material that is not known is refused with those that are", async () => {
  const { code, stderr } = await runCli(...BLADE, "--strength", "cheese");
  expect(code).toBe(2);
  expect(stderr).toContain("polylactide");
});

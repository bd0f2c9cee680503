import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "bollard-cli-"));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

/** K_T = 0.2 by definition, T = K_T rho n² D⁴ (ITTC Symbols List), read by a cell that shows 3 % too much. */
const log = (name: string, zero: number) =>
  file(
    name,
    [
      "Speed (rpm),Cell (gf)",
      ...[0, 900, 1300, 1700, 2100, 2500, 0].map((rpm) => {
        const newton = 0.2 * 998.5980363 * (rpm / 60) ** 2 * 0.076 ** 4;
        return `${rpm},${(zero + (1.03 * newton) / 0.00980665).toFixed(1)}`;
      }),
    ].join("\n"),
  );
const LOG = log("stand.csv", 40);
const AGAIN = log("again.csv", 41);
const WEIGHTS = file(
  "weights.csv",
  ["mass (g),reading (gf)", ...[0, 500, 1000, 1500, 1000, 500, 0].map((mass) => `${mass},${40 + 1.03 * mass}`)].join(
    "\n",
  ),
);
const WATER = ["--diameter", "76mm", "--water", "fresh 18C"];

test("--calibration corrects the thrust by the dead weights and counts their tolerance", async () => {
  const words = ["--calibration", WEIGHTS, "--weights-tolerance", "0.5%", "--json"];
  const { code, stdout, stderr } = await runCli("reduce", LOG, ...WATER, ...words);
  expect(stderr).toBe("");
  expect(code).toBe(0);
  const { thrustCoefficient, calibrations, warnings } = JSON.parse(stdout);
  expect(thrustCoefficient.value).toBeCloseTo(0.2, 3);
  expect(thrustCoefficient.standardUncertainty / thrustCoefficient.value).toBeGreaterThan(0.005 / Math.sqrt(3));
  expect(calibrations).toMatchObject([{ role: "thrust", name: "weights.csv" }]);
  expect(warnings.map((one: { code: string }) => one.code)).not.toContain("bench.no-calibration");
});

test("the arms of a lever multiply what was read, and the page of text says what the calibration is worth", async () => {
  const arms = ["--scale-arm", "300mm ± 0.5mm", "--propeller-arm", "240mm ± 0.5mm"];
  const { code, stdout } = await runCli("reduce", LOG, ...WATER, "--calibration", WEIGHTS, ...arms);
  expect(code).toBe(0);
  expect(stdout).toMatch(/thrust calibrated by weights\.csv: 1 gf of reading is 0\.0119\d* N ±/);
});

test("compare takes the same table for both logs, so that its error cancels", async () => {
  const words = [LOG, AGAIN, ...WATER, "--calibration", WEIGHTS, "--json"];
  const spread = async (tolerance: string) => {
    const { stdout } = await runCli("compare", ...words, "--weights-tolerance", tolerance);
    return JSON.parse(stdout).thrustCoefficientRatio.standardUncertainty;
  };
  expect(await spread("5%")).toBeCloseTo(await spread("0.1%"), 9);
});

test.each([
  { words: ["--calibration", WEIGHTS, "--calibration-uncertainty", "1%"], says: /one calibration of the thrust/ },
  { words: ["--weights-tolerance", "1%"], says: /without --calibration/ },
  { words: ["--calibration", WEIGHTS, "--scale-arm", "300mm"], says: /without --propeller-arm/ },
  { words: ["--calibration", file("bare.csv", "a,b\n0,1\n1,2\n2,3\n")], says: /bare\.csv.*unit/ },
])("$words is refused in one plain sentence", async ({ words, says }) => {
  const { code, stdout, stderr } = await runCli("reduce", LOG, ...WATER, ...words);
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toMatch(says);
});

import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "bollard-cli-"));

function logFile(name: string, text: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const DENSITY = 998.5980363; // kg/m³, fresh water of 18 °C, IAPWS SR6-08(2011)
const D = 0.076;

/** Thrust in newton that K_T = `coefficient` gives at `rpm`: the definition K_T = T/(rho n² D⁴), ITTC Symbols List. */
const thrust = (coefficient: number, rpm: number) => coefficient * DENSITY * (rpm / 60) ** 2 * D ** 4;

/** A notebook table that follows K_T = 0.2 exactly, written in grams. */
const RPMS = [0, 900, 1300, 1700, 2100, 2500, 0];
const notebook = (coefficient: number) =>
  [
    "Speed (rpm);Scale (gf);Volts (V);Amps (A)",
    ...RPMS.map((rpm) => {
      const grams = 12 + thrust(coefficient, rpm) / 0.00980665;
      const watts = rpm === 0 ? 0 : 0.045 * DENSITY * (rpm / 60) ** 3 * D ** 5 * 6.3;
      return `${rpm};${grams.toFixed(1).replace(".", ",")};15,00;${(watts / 15).toFixed(3).replace(".", ",")}`;
    }),
  ].join("\n");

const WATER = ["--diameter", "76mm", "--water", "fresh 18C"];

test("reduce gives the coefficient a hand-typed table was written with, as JSON with the agreed keys", async () => {
  const { code, stdout, stderr } = await runCli("reduce", logFile("notebook.csv", notebook(0.2)), ...WATER, "--json");
  expect(stderr).toBe("");
  expect(code).toBe(0);
  const result = JSON.parse(stdout);
  expect(result.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  const [low, high] = result.thrustCoefficient.interval95;
  expect(low).toBeLessThan(0.2);
  expect(high).toBeGreaterThan(0.2);
  expect(result.powerCoefficient).toBeNull();
  expect(result.plateaus).toHaveLength(5);
  for (const plateau of result.plateaus) {
    for (const key of ["rotationRate", "thrust", "voltage", "current", "electricalPower"]) {
      expect(plateau[key], key).toMatchObject({ value: expect.any(Number), standardUncertainty: expect.any(Number) });
      expect(plateau[key].interval95).toHaveLength(2);
    }
    expect(plateau.shaftPower).toBeNull();
    expect(plateau).toHaveProperty("duration");
  }
  expect(result.exponent.value).toBeCloseTo(2, 2);
  expect(Math.abs(result.intercept.value)).toBeLessThan(0.05);
  expect(Array.isArray(result.warnings)).toBe(true);
});

test("plateaus stand under the heads of their columns, and water that nobody stated is told", async () => {
  const path = logFile("heads.csv", notebook(0.2));
  const { stdout } = await runCli("reduce", path, "--diameter", "76mm");
  const lines = stdout.split("\n");
  const head = lines.find((line) => line.startsWith("plateau "))!;
  const first = lines[lines.indexOf(head) + 1]!;
  for (const name of ["lines", "rotation rate", "thrust"]) expect(first[head.indexOf(name)], name).toMatch(/\d/);
  expect(stdout).toMatch(/Nobody stated what the propeller turned in: fresh water, 18 °C was taken/);
  expect((await runCli("reduce", path, ...WATER)).stdout).not.toContain("Nobody stated");
});

test("a role stated with --column is used, and its unit can be stated with --unit", async () => {
  const path = logFile("odd-names.csv", notebook(0.2).replace("Speed (rpm);Scale (gf)", "Alpha;Beta"));
  const words = ["--column", "rpm=Alpha", "--column", "thrust=Beta", "--unit", "rpm=rpm", "--unit", "thrust=gf"];
  const { code, stdout } = await runCli("reduce", path, ...WATER, ...words, "--json");
  expect(code).toBe(0);
  expect(JSON.parse(stdout).thrustCoefficient.value).toBeCloseTo(0.2, 3);
});

test("electrical turns need --pole-pairs, and use them", async () => {
  const text = notebook(0.2)
    .replace("Speed (rpm)", "Speed (erpm)")
    .replace(/^(\d+);/gm, (_, rpm) => `${Number(rpm) * 7};`);
  const path = logFile("electrical.csv", text);
  const without = await runCli("reduce", path, ...WATER, "--json");
  expect(without.code).toBe(2);
  expect(without.stderr).toMatch(/pole pairs/);
  const { code, stdout } = await runCli("reduce", path, ...WATER, "--pole-pairs", "7", "--json");
  expect(code).toBe(0);
  expect(JSON.parse(stdout).thrustCoefficient.value).toBeCloseTo(0.2, 3);
});

test("compare gives the second log over the first", async () => {
  const a = logFile("rough.csv", notebook(0.16));
  const b = logFile("smooth.csv", notebook(0.24));
  const { code, stdout } = await runCli("compare", a, b, ...WATER, "--json");
  expect(code).toBe(0);
  const { thrustCoefficientRatio } = JSON.parse(stdout);
  expect(thrustCoefficientRatio.value).toBeCloseTo(1.5, 2);
  expect(thrustCoefficientRatio.interval95[0]).toBeLessThan(1.5);
  expect(thrustCoefficientRatio.interval95[1]).toBeGreaterThan(1.5);
});

test("compare exits with 1 when a claimed ratio is not supported", async () => {
  const words = [logFile("rough2.csv", notebook(0.16)), logFile("smooth2.csv", notebook(0.24)), ...WATER];
  expect((await runCli("compare", ...words, "--claimed-ratio", "2")).code).toBe(1);
  expect((await runCli("compare", ...words, "--claimed-ratio", "1.3")).code).toBe(0);
});

test("--monte-carlo adds the check to the result, the same for the same seed", async () => {
  const path = logFile("drawn.csv", notebook(0.2));
  const words = ["--diameter", "76mm ± 0.5mm", "--water", "fresh 18C", "--monte-carlo", "4000", "--seed", "5"];
  const json = JSON.parse((await runCli("reduce", path, ...words, "--json")).stdout);
  expect(json.monteCarlo).toMatchObject({ draws: 4000, seed: 5, results: [{ quantity: "thrustCoefficient" }] });
  expect(json.budget.thrustCoefficient.rows[0]).toMatchObject({ name: "diameter", kind: "B", inputUnit: "m" });
  const { stdout } = await runCli("reduce", path, ...words);
  expect(stdout).toMatch(/Monte Carlo, 4000 draws, seed 5: K_T 0\.\d+ to 0\.\d+ at 95 %; agrees/);
  expect(stdout).toMatch(/Doubt of K_T, share of the variance: diameter \d+ %/);
});

test.each([
  { name: "missing.csv", text: null, says: /missing\.csv: there is no file of this name/ },
  { name: "empty.csv", text: "", says: /empty\.csv/ },
  {
    name: "picture.csv",
    text: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 0, 1, 2, 3]),
    says: /picture\.csv/,
  },
  { name: "prose.csv", text: "dear diary\ntoday I tested nothing\n", says: /prose\.csv/ },
  { name: "one-point.csv", text: "rpm,thrust (N)\n0,0\n1500,3.1\n", says: /plateau|reading/ },
  { name: "no-thrust.csv", text: "rpm,volts (V)\n0,12\n1500,12\n2000,11.9\n", says: /thrust/ },
])("$name is refused in one plain sentence", async ({ name, text, says }) => {
  const path = text === null ? join(folder, name) : logFile(name, text);
  const { code, stdout, stderr } = await runCli("reduce", path, ...WATER, "--json");
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toMatch(says);
  expect(stderr).not.toMatch(/\bat .*\.js:\d+|NaN|undefined/);
});

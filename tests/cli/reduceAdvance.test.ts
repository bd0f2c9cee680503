import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const DENSITY = 998.5980363; // kg/m³, fresh water of 18 °C, IAPWS SR6-08(2011)
const D = 0.076;
const WATER = ["--diameter", "76mm", "--water", "fresh 18C"];

/** Definition K_T = T/(rho n² D⁴), J = V/(n D), ITTC Symbols List, of an invented K_T = 0.28 - 0.24 J - 0.06 J². */
function towed(speedColumn: boolean, speed = 1) {
  const rows = [1200, 1400, 1700, 2000, 2400, 2800, 3300].map((rpm) => {
    const n = rpm / 60;
    const J = speed / (n * D);
    const thrust = (0.28 - 0.24 * J - 0.06 * J ** 2) * DENSITY * n ** 2 * D ** 4;
    return [rpm, thrust.toFixed(4), ...(speedColumn ? [speed] : [])].join(",");
  });
  const header = `rpm,thrust (N)${speedColumn ? ",flow (m/s)" : ""}`;
  const path = join(mkdtempSync(join(tmpdir(), "bollard-tow-")), "tow.csv");
  writeFileSync(path, [header, `0,0${speedColumn ? ",1" : ""}`, ...rows].join("\n"));
  return path;
}

test("reduce finds the flow column by itself and gives the curve in JSON", async () => {
  const { code, stdout } = await runCli("reduce", towed(true), ...WATER, "--order", "2", "--json");
  expect(code).toBe(0);
  const { advance, reverse, exponent, thrustCoefficient } = JSON.parse(stdout);
  expect(advance).toMatchObject({ speedFrom: "column", bollard: "extrapolated", powerCurve: null, peak: null });
  expect(advance.thrustCurve).toMatchObject({ order: 2, orderFrom: "stated" });
  [0.28, -0.24, -0.06].forEach((c, k) => {
    expect(advance.thrustCurve.coefficients[k]).toBeCloseTo(c, 3);
  });
  expect(thrustCoefficient.value).toBeCloseTo(0.28, 3);
  expect(reverse).toBeNull();
  expect(exponent).toBeNull();
});

test("--advance-speed gives the same curve where no column has the speed, with its doubt in every advance ratio", async () => {
  const { code, stdout } = await runCli(
    "reduce",
    towed(false),
    ...WATER,
    "--advance-speed",
    "1 m/s ± 0.02 m/s",
    "--json",
  );
  expect(code).toBe(0);
  const { advance } = JSON.parse(stdout);
  expect(advance.speedFrom).toBe("recipe");
  for (const { advanceRatio } of advance.points)
    expect(advanceRatio.standardUncertainty / advanceRatio.value).toBeGreaterThan(0.0199);
});

test("reduce prints the sentence, the plateaus against J and the orders", async () => {
  const { stdout } = await runCli("reduce", towed(false), ...WATER, "--advance-speed", "2 kn");
  expect(stdout).toMatch(/K_T falls from .* at rest \(continued\)/);
  expect(stdout).toMatch(/# {2}speed +J +K_T +K_Q +eta_O/);
  expect(stdout).toContain("corrected information criterion");
});

test.each([
  { args: ["--order", "5"], says: /order 5.*1 to 4/ },
  { args: ["--advance-speed", "3 kg"], says: /speed/ },
])("reduce refuses $args", async ({ args, says }) => {
  const { code, stderr } = await runCli("reduce", towed(true), ...WATER, ...args);
  expect(code).not.toBe(0);
  expect(stderr).toMatch(says);
});

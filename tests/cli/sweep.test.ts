import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { simulatedRamp } from "../property/benchSimulatedRamp.ts";
import { uniformFrom } from "../property/benchSimulatedRun.ts";
import { runCli } from "./runCli.ts";

const RAMP = {
  ...{ thrustCoefficient: 0.2, samplingRate: 20, topRate: 45, rise: 40, fall: 40, rest: 5, noiseFloor: 0.05 },
  ...{ correlationTime: 0.1, rateNoise: 0.05, lag: 0.15, zero: 0.8, drift: 0, bend: 1 },
};

function rampLog(): string {
  const { time, thrust, rate } = simulatedRamp(RAMP, uniformFrom(3));
  const rows = time.map((t, i) => `${t.toFixed(2)},${thrust[i]!.toFixed(3)},${(60 * rate[i]!).toFixed(0)}`);
  const path = join(mkdtempSync(join(tmpdir(), "bollard-sweep-")), "ramp.csv");
  writeFileSync(path, ["time (s),thrust (N),speed (rpm)", ...rows, ""].join("\n"));
  return path;
}

test("a ramp is refused with the option that takes it, and --sweep gives its coefficient, lag and method", async () => {
  const log = rampLog();
  const refused = await runCli("reduce", log, "--diameter", "76mm", "--water", "fresh 18C");
  expect(refused.code).not.toBe(0);
  expect(refused.stderr).toContain("--sweep");

  const swept = await runCli("reduce", log, "--diameter", "76mm", "--water", "fresh 18C", "--sweep");
  expect(swept.code).toBe(0);
  expect(swept.stdout).toContain("Prais & Winsten 1954");
  expect(swept.stdout).toMatch(/Thrust comes 0\.1\d* ± 0\.0\d+\ss after the rotation rate/);

  const { stdout } = await runCli("reduce", log, "--diameter", "76mm", "--water", "fresh 18C", "--sweep", "--json");
  const [low, high] = JSON.parse(stdout).thrustCoefficient.interval95;
  expect(low).toBeLessThan(0.2);
  expect(high).toBeGreaterThan(0.2);
});

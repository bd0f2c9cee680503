import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

/** A notebook table of K_T = 0.2 (K_T = T/(rho n² D⁴), ITTC Symbols List; 998.598 kg/m³, IAPWS SR6-08). */
const TABLE = [
  "Speed (rpm);Scale (N)",
  ...[0, 900, 1300, 1700, 2100, 0].map(
    (rpm) => `${rpm};${(0.2 * 998.598 * (rpm / 60) ** 2 * 0.076 ** 4 + 0.1).toFixed(3)}`,
  ),
].join("\n");

test("reduce prints the card of checks: the sentence, then what to look at with what to do", async () => {
  const path = join(mkdtempSync(join(tmpdir(), "bollard-cli-")), "notebook.csv");
  writeFileSync(path, TABLE);
  const { code, stdout } = await runCli("reduce", path, "--diameter", "76mm", "--water", "fresh 18C");
  expect(code).toBe(0);
  expect(stdout).toMatch(/Can this run be trusted\? \d+ of 14 checks passed; look at: .*plateaus and their range/);
  expect(stdout).toMatch(/ {2}look +Plateaus and their range +The fit rests on 4 plateaus.*Hold five steps/);
  const deep = await runCli("reduce", path, "--diameter", "76mm", "--water", "fresh 18C", "--immersion", "20 cm");
  expect(deep.stdout).toMatch(/ {2}passed +Immersion +2\.6 diameters/);
  expect(stdout).toMatch(/ {2}not known +Immersion +How deep the shaft lay is not stated/);
});

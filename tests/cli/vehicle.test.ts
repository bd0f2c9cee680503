import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { relative } from "../relative.ts";
import { SIX_THRUSTERS, TWO_THRUSTERS } from "../unit/vehicleExample.ts";
import { runCli } from "./runCli.ts";

function vehicleFile(vehicle: unknown): string {
  const path = join(temporaryFolder(), "vehicle.json");
  writeFileSync(path, JSON.stringify(vehicle));
  return path;
}

test("a vehicle from a file, as JSON and in words", async () => {
  const { code, stdout } = await runCli("vehicle", "--file", vehicleFile(TWO_THRUSTERS), "--json");
  expect(code).toBe(0);
  // scipy brentq and fsolve, see the reference test.
  expect(JSON.parse(stdout).motions[0].speed.value).toSatisfy(relative(1.9497862674, 1e-5));
  const words = await runCli("vehicle", "--file", vehicleFile(TWO_THRUSTERS));
  expect(words.stdout.match(/Ahead it goes 1\.95/g)).toHaveLength(1);
  expect(words.stdout).toMatch(/\nAhead, at that speed, it draws 30\.7\sA and 350\sW from the bus\.\n/);
});

test("a requirement that is not met ends with 1, a file that is not there with 2", async () => {
  const { code, stdout } = await runCli(
    "vehicle",
    "--file",
    vehicleFile({ ...TWO_THRUSTERS, requirement: { speed: 3 } }),
  );
  expect(code).toBe(1);
  expect(stdout).toMatch(/not met/);
  const gone = await runCli("vehicle", "--file", "/nowhere/vehicle.json");
  expect(gone.code).toBe(2);
  expect(gone.stderr).toMatch(/no file of this name/);
});

test("a mission that is longer than the charge is told first and ends with 1, whatever is asked", async () => {
  const pack = { ...TWO_THRUSTERS.supply.pack, charge: 3600 };
  const swim = { name: "far", kind: { does: "swim", speed: 1, extent: { by: "duration", duration: 1e5 } } };
  const path = vehicleFile({ ...TWO_THRUSTERS, supply: { pack }, mission: { legs: [swim] } });
  const { code, stdout } = await runCli("vehicle", "--file", path, "--json");
  expect(code).toBe(1);
  const answer = JSON.parse(stdout);
  expect(answer.sentence).toMatch(/^The mission is longer than the charge\./);
  expect(answer.warnings[0]).toMatchObject({ code: "vehicle.mission-not-done", where: "mission" });
});

test("the speed over the tether paid out is told in words", async () => {
  const path = vehicleFile({ ...SIX_THRUSTERS, requirement: { speed: 0.5, tetherLength: 40 } });
  const { stdout } = await runCli("vehicle", "--file", path);
  expect(stdout).toMatch(/Without a tether it goes .* ahead through the water, with 40\.0 m out /);
  expect(stdout).toMatch(/\n {2}40\.0 m of tether: .*m\/s ahead\n/);
});

import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { BROKEN_LOGS } from "../unit/brokenLogs.ts";
import { runCli } from "./runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "bollard-intake-"));
const logNamed = (name: string) => BROKEN_LOGS.find((log) => log.name === name)!;

function fileOf(name: string, bytes: Uint8Array): string {
  const path = join(folder, `${name.replaceAll(" ", "-")}.csv`);
  writeFileSync(path, bytes);
  return path;
}

const STAND = ["--diameter", "76mm", "--water", "fresh 18C"];

test("reduce lays the electrical log over the thrust log and says by how much", async () => {
  const { bytes, companion } = logNamed("two logs apart");
  const [thrust, meter] = [fileOf("thrust", bytes), fileOf("meter", companion!)];
  const { code, stdout } = await runCli("reduce", thrust, "--electrical-log", meter, ...STAND, "--json");
  expect(code).toBe(0);
  const { plateaus, warnings } = JSON.parse(stdout);
  expect(plateaus[0].electricalPower.value).toBeGreaterThan(5);
  const aligned = warnings.find((told: { code: string }) => told.code === "bench.logs-aligned");
  expect(aligned.message).toContain("−412.3 s");
  const stated = await runCli("reduce", thrust, "--electrical-log", meter, "--lag=-412.3s", ...STAND);
  expect(stated.stdout).toContain("as you stated");
});

test("reduce shows every reading of a doubtful unit and lists what was repaired", async () => {
  const doubtful = await runCli("reduce", fileOf("grams", logNamed("gram-force labelled newton").bytes), ...STAND);
  expect(doubtful.stdout).toMatch(/In newton .*impossible\. In gram-force .*possible/);
  const repaired = await runCli("reduce", fileOf("rollover", logNamed("ms rollover").bytes), ...STAND);
  expect(repaired.stdout).toMatch(/ran over once .*its times were carried on/);
});

test("how the text is read can be stated, and a repair left undone", async () => {
  const log = fileOf("other mark", logNamed("decimal mark changes").bytes);
  const read = await runCli("reduce", log, ...STAND);
  expect(read.stdout).toMatch(/read as decimals all the same; .*--read without=log\.other-decimals/);
  const left = await runCli("reduce", log, ...STAND, "--read", "without=log.other-decimals", "--read", "header=1");
  expect(left.stdout).toMatch(/not read as decimals, as you chose/);
});

test.each([
  { stated: "decimals=,", says: '--read: "decimals" is no way of reading. Needed: decimal-mark, between, header' },
  { stated: "header=x", says: '--read: "x" is not a number' },
  { stated: "without=log.no-header", says: '--read: "log.no-header" is not one of the choices' },
])("--read $stated is refused in words", async ({ stated, says }) => {
  const { code, stderr } = await runCli("reduce", fileOf("plain", logNamed("tab").bytes), ...STAND, "--read", stated);
  expect(code).not.toBe(0);
  expect(stderr).toContain(says);
});

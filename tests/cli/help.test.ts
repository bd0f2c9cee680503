import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { VERBS } from "../../server/cli/verbs.ts";
import { temporaryFolder } from "../api/temporaryFolder.ts";
import { TWO_THRUSTERS } from "../unit/vehicleExample.ts";
import { runCli } from "./runCli.ts";
import { startedCli } from "./startedCli.ts";

test("--help lists every verb", async () => {
  const { code, stdout } = await runCli("--help");
  expect(code).toBe(0);
  for (const verb of Object.keys(VERBS)) expect(stdout).toContain(`  ${verb}`);
});

test.each(Object.keys(VERBS))("%s --help shows usage, options and an example", async (verb) => {
  const { code, stdout } = await runCli(verb, "--help");
  expect(code).toBe(0);
  expect(stdout).toMatch(new RegExp(`^Usage: npm run --silent cli -- ${verb}`));
  expect(stdout).toContain("--help");
  expect(stdout).toContain("Examples:");
});

test.each([
  { words: () => ["vehicle", "--help"], ends: 0 },
  { words: () => ["vehicle", "--file", vehicleThatIsTooSlow()], ends: 1 },
  { words: () => ["vehicle", "--file", "/nowhere/vehicle.json"], ends: 2 },
])("as a program of its own it says what it says in these tests, and ends with $ends", async ({ words, ends }) => {
  const said = words();
  const started = await startedCli(...said);
  expect(started.code).toBe(ends);
  expect(started).toEqual(await runCli(...said));
});

function vehicleThatIsTooSlow(): string {
  const path = join(temporaryFolder(), "slow.json");
  writeFileSync(path, JSON.stringify({ ...TWO_THRUSTERS, requirement: { speed: 30 } }));
  return path;
}

test("no verb at all exits with 2 and shows what there is", async () => {
  const { code, stdout } = await runCli();
  expect(code).toBe(2);
  expect(stdout).toContain("Usage:");
});

/** The commands that the README shows, so that they can not go stale. */
const README = readFileSync(resolve(import.meta.dirname, "../../README.md"), "utf8");
const COMMANDS = [...README.matchAll(/^npm run --silent cli -- (.+)$/gm)].map((match) => match[1]!);

test("the README shows each verb of the main job", () => {
  expect(COMMANDS.map((command) => command.split(" ")[0])).toEqual([
    "reduce",
    "compare",
    "reduce",
    "identify",
    "predict",
    "drive",
    "shortlist",
    "vehicle",
  ]);
});

test.each(COMMANDS)("the README's command works: %s", async (command) => {
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map((match) => match[1] ?? match[2]!);
  const { code, stdout, stderr } = await startedCli(...words);
  expect(stderr).toBe("");
  expect(code).toBe(0);
  expect(stdout).not.toMatch(/NaN|undefined/);
});

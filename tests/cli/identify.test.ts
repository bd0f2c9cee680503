import { resolve } from "node:path";
import { expect, test } from "vitest";
import { MotorIdentification } from "../../shared/model/motorIdentification.ts";
import { runCli } from "./runCli.ts";

const log = (name: string) => resolve(import.meta.dirname, "../../samples/logs", name);
const LOGS = [log("finish-sanded-1.csv"), "--dry", log("no-load-dry.csv"), "--wet", log("no-load-wet.csv")];

test("identify prints the constants of a motor from loaded, dry and wet logs, the answer first", async () => {
  const { code, stdout, stderr } = await runCli("identify", ...LOGS, "--controller-resistance", "8mohm");
  expect(stderr).toBe("");
  expect(code).toBe(0);
  expect(stdout).toMatch(
    /^Kv 4\d\d\.?\d* ± [\d.]+\srpm\/V, resistance [\d.]+ ± [\d.]+\smΩ; the no-load current grows with speed/,
  );
  expect(stdout).toContain("full throttle taken to be at 1900 (--full-command says otherwise)");
  expect(stdout).not.toMatch(/NaN|undefined|Infinity/);
});

test("identify --json gives the whole result", async () => {
  const { code, stdout } = await runCli("identify", ...LOGS, "--json");
  expect(code).toBe(0);
  const { fullCommand, runs, ...result } = JSON.parse(stdout);
  expect(MotorIdentification.safeParse(result).error?.issues ?? []).toEqual([]);
  expect(fullCommand).toBe(1900);
  expect(runs).toHaveLength(3);
});

test("identify counts pole pairs without a log", async () => {
  const { code, stdout } = await runCli("identify", "--count-pole-pairs", "31400=4486");
  expect(code).toBe(0);
  expect(stdout).toMatch(/^7 pole pairs/);
});

test.each([
  { words: [], says: /no log was named/ },
  { words: ["--dry", log("no-load-dry.csv")], says: /resistance/ },
  { words: [log("kitchen-scale.txt")], says: /throttle/ },
  { words: ["--count-pole-pairs", "31400"], says: /=/ },
  { words: ["--count-pole-pairs", "29159=4486"], says: /whole number/ },
  { words: [...LOGS, "--full-command", "all"], says: /number above 0/ },
])("identify $words is refused in one sentence", async ({ words, says }) => {
  const { code, stdout, stderr } = await runCli("identify", ...words);
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toMatch(says);
});

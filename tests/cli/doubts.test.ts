import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { assumedLine } from "../../server/cli/assumedLine.ts";
import { USAGE as COMPARE, run as compare } from "../../server/cli/compare.ts";
import { LOG_OPTIONS } from "../../server/cli/logOptions.ts";
import { Words } from "../../server/cli/options.ts";
import { reduceLog } from "../../server/cli/reduceLog.ts";
import { roleOfText } from "../../shared/log/roleUnits.ts";

const folder = mkdtempSync(join(tmpdir(), "bollard-doubts-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const USAGE = { verb: "reduce", arguments: "LOG", about: "", options: LOG_OPTIONS, examples: [] };

function warningsOf(text: string, ...options: string[]) {
  const path = join(folder, "stand.csv");
  writeFileSync(path, text);
  const words = new Words(USAGE, [path, "--diameter", "76mm", "--water", "fresh 18C", ...options]);
  return reduceLog(path, words).then(({ warnings }) => warnings);
}

const TABLE = "thrust,rpm\n0,0\n0.5,1777\n1,2513\n2,3554\n3,4353\n";
const TWO_CELLS = "Load A [g],Load B [g],rpm\n0,0,0\n270,280,1777\n540,560,2513\n1080,1090,3554\n";

test("a guess that is not sure is told with the option that says otherwise", async () => {
  const told = (await warningsOf(TABLE)).find(({ code }) => code === "cli.doubtful-guess");
  expect(told?.message).toContain("--unit thrust=kg");
  const cells = (await warningsOf(TWO_CELLS)).filter(({ code }) => code === "cli.doubtful-guess");
  expect(cells.map(({ message }) => message).join()).toContain('--column thrust="Load B [g]"');
});

test("a guess that the words settle is not told", async () => {
  const warnings = await warningsOf(TABLE, "--unit", "thrust=kg");
  expect(warnings.map(({ code }) => code)).not.toContain("cli.doubtful-guess");
});

test.each([
  ["--factor", "torque=2"],
  ["--kv=700rpm/V", "--resistance=0.1ohm", "--no-load-current=0.5A"],
])("an option for which the log has no column is told: %s", async (...options) => {
  expect((await warningsOf(TABLE, ...options)).map(({ code }) => code)).toContain("cli.no-effect");
});

test("a diameter without ± is told as taken exactly, and one with ± is not", async () => {
  const told = (await warningsOf(TABLE)).find(({ code }) => code === "cli.diameter-exact");
  expect(told?.message).toMatch(
    /exactly 76.0 mm.*1 % more diameter makes K_T 4 % and C_P 5 % smaller.*--diameter "76.0 mm ± 0.2 mm"/,
  );
  const path = join(folder, "stand.csv");
  const { warnings } = await reduceLog(path, new Words(USAGE, [path, "--diameter", "76 mm ± 0.2 mm"]));
  expect(warnings.map(({ code }) => code)).not.toContain("cli.diameter-exact");
});

test("what was assumed stands in one line beside the numbers", async () => {
  const path = join(folder, "assumed.csv");
  writeFileSync(path, TABLE);
  const reduction = await reduceLog(path, new Words(USAGE, [path, "--diameter", "76mm"]));
  expect(assumedLine(reduction)[0]).toBe(
    "Assumed, as nobody stated it: fresh water, 18 °C; a diameter of exactly 76.0 mm; thrust written in N; rotation rate written in rpm. See the notes below.",
  );
});

test("an uncertainty without its per cent sign is refused, and one of more than 20 % is asked about", async () => {
  await expect(warningsOf(TABLE, "--calibration-uncertainty", "1")).rejects.toThrow("may be per cent or a part of one");
  const asked = (await warningsOf(TABLE, "--calibration-uncertainty", "50%")).find(
    ({ code }) => code === "bench.large-calibration-uncertainty",
  );
  expect(asked?.message).toContain("Was 0.50 % meant?");
});

test("meters of which nothing is stated are told as taken exactly, until their accuracy is stated", async () => {
  const rows =
    "thrust (N),rpm,voltage (V),current (A)\n0,0,15,0\n0.5,1777,15,1\n1,2513,15,2\n2,3554,15,6\n3,4353,15,11\n";
  const exact = async (...options: string[]) =>
    (await warningsOf(rows, ...options)).find(({ code }) => code === "bench.meters-exact")?.message ?? "";
  expect(await exact()).toMatch(/^voltage and current: no accuracy is stated/);
  expect(await exact("--meter-uncertainty", "current=2%")).toMatch(/^voltage: no accuracy/);
  expect(await exact("--meter-uncertainty", "current=2%", "--meter-uncertainty", "voltage=1%")).toBe("");
});

test("a negative uncertainty and a log compared with itself are refused", async () => {
  await expect(warningsOf(TABLE, "--calibration-uncertainty=-1%")).rejects.toThrow("0 % or more");
  const path = join(folder, "stand.csv");
  await expect(compare(new Words(COMPARE, [path, path, "--diameter", "76mm"]), [])).rejects.toThrow(
    "a run can not differ from itself",
  );
});

test.each([
  ["T", "thrust"],
  ["t", "time"],
  ["Q", "torque"],
  ["I", "current"],
  ["push", "thrust"],
  ["thr", "command"],
])("%s may be typed for the %s", (text, role) => expect(roleOfText(text)).toBe(role));

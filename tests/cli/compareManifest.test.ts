import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { ComparisonAnswer } from "../../shared/model/comparisonRequest.ts";
import { runCli } from "./runCli.ts";

const RUNS = resolve(import.meta.dirname, "../../samples/runs.csv");
const LOGS = resolve(import.meta.dirname, "../../samples/logs");

/** A manifest in a folder of its own, with absolute paths to the sample logs. */
function manifest(...lines: readonly string[]): string {
  const path = join(mkdtempSync(join(tmpdir(), "manifest-")), "runs.csv");
  writeFileSync(path, lines.join("\n"));
  return path;
}

/** Two mountings of each finish: enough where the answer itself is not in question. */
const HEADINGS = "file,variant,finish,diameter (mm),water";
const ROWS = ["as printed", "sanded"].flatMap((finish) =>
  [1, 2].map((i) => `${LOGS}/finish-${finish.replace(" ", "-")}-${i}.csv,${finish},${finish},76,fresh 18C`),
);

test("a table of runs is compared: what differs, every ratio, and what single mountings leave open", async () => {
  const { code, stdout } = await runCli("compare", "--manifest", RUNS, "--robustness");
  expect(code).toBe(0);
  expect(stdout).toContain("The variants differ in finish and pitch ratio");
  expect(stdout).toMatch(/sanded gives 1\.6\d+ times the thrust of as printed at equal rotation rate/);
  expect(stdout).toMatch(/Spread from mounting to mounting: one for both variants, from [\d.]+ % and [\d.]+ %; chance/);
  expect(stdout).toMatch(/Thrust at equal electrical power of [\d.]+ W {3}1\.3\d+ \(95 %: /);
  expect(stdout).toMatch(/Electrical power at equal thrust of [\d.]+ N {3}0\.6/);
  expect(stdout).toContain("The answer for sanded over as printed holds");
  expect(stdout).toContain("without finish-sanded-2.csv");
  expect(stdout).toContain("unless an F test at the 10 % level tells theirs apart");
  expect(stdout).not.toContain("claim:");
  expect(stdout).toContain("Note: pitch 0.8: pitch 0.8 was run with one mounting only");
});

test("as JSON the whole answer fits its document, with trend and analysis of variance where asked for", async () => {
  const words = ["--group-by", "pitch-ratio", "--trend", "pitchRatio", "--anova", "finish,pitchRatio", "--json"];
  const { code, stdout } = await runCli("compare", "--manifest", RUNS, ...words);
  expect(code).toBe(0);
  const answer = ComparisonAnswer.parse(JSON.parse(stdout));
  expect(answer.comparisons.map(({ variant }) => variant.name)).toEqual(["pitch ratio 0.8", "pitch ratio 1.2"]);
  expect(answer.trend!.points).toHaveLength(9);
  expect(answer.anova!.design).toBe("emptyCells");
  expect(answer.factors.compared).toEqual(["pitchRatio"]);
});

test("only the runs that are asked for are taken, and groups are made of tags", async () => {
  const tagged = ROWS.map((row, i) => `${row},${i < 2 ? "rough" : "smooth"} tank`);
  const path = manifest(`${HEADINGS},tags`, ...tagged, `${ROWS[0]!.replace("-1.csv", "-3.csv")},`);
  const words = ["--manifest", path, "--group-by", "tags", "--tag", "tank", "--json"];
  const { stdout } = await runCli("compare", ...words);
  const { runs, comparisons } = ComparisonAnswer.parse(JSON.parse(stdout));
  expect(runs.map(({ finish }) => finish)).toEqual(["as printed", "as printed", "sanded", "sanded"]);
  expect(comparisons.map(({ baseline, variant }) => [baseline.name, variant.name])).toEqual([
    ["rough, tank", "smooth, tank"],
  ]);
});

test("a claimed ratio that one comparison does not bear out exits with 1; each spread can be its own", async () => {
  const words = ["--manifest", manifest(HEADINGS, ...ROWS), "--claimed-ratio"];
  const borneOut = await runCli("compare", ...words, "1.1", "--claimed-by", "a leaflet");
  expect(borneOut.code).toBe(0);
  expect(borneOut.stdout).toContain("(a leaflet)");
  expect(borneOut.stdout).toContain('These runs support "more than 1.1 times"');
  const { code, stdout } = await runCli("compare", ...words, "1.7", "--spreads", "separate");
  expect(code).toBe(1);
  expect(stdout).toContain("two mountings each, each variant with a spread of its own");
  expect(stdout).toContain("Spread from mounting to mounting: each variant its own");
  expect(stdout).toContain("Each variant has its own spread from mounting to mounting, as chosen.");
  expect(stdout).toContain('These runs neither support nor refute "more than 1.7 times"');
});

test("bad rows are named by line and column, and nothing is computed", async () => {
  const path = manifest("file,variant,diameter (mm),blades", "a.csv,x,wide,3", "b.csv,y,76,many");
  const { code, stdout, stderr } = await runCli("compare", "--manifest", path);
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toContain("line 2, column diameter (mm)");
  expect(stderr).toContain("line 3, column blades");
});

test("a log that is not there is told with the line that names it", async () => {
  const path = manifest("file,variant,diameter (mm)", `${LOGS}/finish-sanded-1.csv,x,76`, "gone.csv,y,76");
  const { code, stderr } = await runCli("compare", "--manifest", path);
  expect(code).toBe(2);
  expect(stderr).toContain("runs.csv, line 3, gone.csv");
});

test.each([
  { words: ["--manifest", "nowhere.csv"], says: "--manifest nowhere.csv: there is no file of this name" },
  { words: ["a.csv", "--manifest", RUNS], says: "one or the other" },
  { words: ["--manifest", RUNS, "--trend", "colour"], says: "one of pitchRatio" },
  { words: ["--manifest", RUNS, "--spreads", "wide"], says: "one of tested, pooled, separate" },
  { words: ["--manifest", RUNS, "--anova", "finish,day,pack"], says: "one or two" },
  { words: ["--manifest", RUNS, "--baseline", "rough"], says: 'no group named "rough"' },
])("$words is refused, exit code 2: $says", async ({ words, says }) => {
  const { code, stderr } = await runCli("compare", ...words);
  expect(code).toBe(2);
  expect(stderr).toContain(says);
});

test("plan tells the mountings, and prints a sheet whose order the seed fixes", async () => {
  const words = ["--spread", "2%", "--difference", "5%", "--variant", "as printed", "--variant", "sanded"];
  const { code, stdout } = await runCli("plan", ...words, "--seed", "7", "--diameter", "76mm");
  expect(code).toBe(0);
  expect(stdout).toContain("4 mountings of each variant show a difference of 5.0 % with a chance of 80 %");
  expect(stdout).toContain("Caution: Spinning blades");
  expect(stdout.match(/^\d+ +all +(as printed|sanded)/gm)).toHaveLength(8);
  expect((await runCli("plan", ...words, "--seed", "7", "--diameter", "76mm")).stdout).toBe(stdout);
  const refused = await runCli("plan", "--spread", "2%", "--difference", "5%", "--power", "20%");
  expect(refused.code).toBe(2);
  expect(refused.stderr).toContain("--power");
});

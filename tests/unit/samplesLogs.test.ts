import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { fixed, spoil } from "../../samples/generator/glitches.ts";
import { sampleLogs } from "../../samples/generator/logs.ts";
import { randomSource } from "../../samples/generator/random.ts";
import { stairs } from "../../samples/generator/schedule.ts";

const FOLDER = new URL("../../samples/logs/", import.meta.url);
const LOGS = sampleLogs();
const textOf = (fileName: string) => LOGS.find((log) => log.fileName === fileName)!.text;

describe("the demonstration logs", () => {
  test.each(LOGS)("$fileName on disk is byte for byte what the generator makes", ({ fileName, text }) => {
    expect(readFileSync(new URL(fileName, FOLDER)).equals(Buffer.from(text, "utf-8"))).toBe(true);
  });

  test("are the files in the folder and the files of the demonstration, no more and no fewer", () => {
    const names = LOGS.map((log) => log.fileName).sort();
    expect(readdirSync(FOLDER).sort()).toEqual(names);
    expect(DEMO.runs.map((run) => run.file).sort()).toEqual(names);
  });

  test.each(LOGS)("$fileName says in its first line that it is invented", ({ text }) => {
    expect(text.split("\n")[0]).toContain("# invented demonstration data");
  });

  test("stay under 2.5 MB together", () => {
    expect(LOGS.reduce((sum, log) => sum + Buffer.byteLength(log.text), 0)).toBeLessThan(2.5e6);
  });

  test("another seed gives other logs", () => {
    expect(sampleLogs(1).map((log) => log.text)).not.toEqual(LOGS.map((log) => log.text));
  });

  test("the pitch logs start with a byte order mark and end their lines with CRLF", () => {
    const text = textOf("pitch-1-0.csv");
    expect(text.startsWith("\ufeff")).toBe(true);
    expect(text.match(/\r\n/g)?.length).toBe(text.match(/\n/g)?.length);
  });

  test("the second sanded log holds its header twice and a clock that goes back to zero", () => {
    const lines = textOf("finish-sanded-2.csv").trimEnd().split("\n");
    const headers = lines.flatMap((line, index) => (line.startsWith("time") ? [index] : []));
    expect(headers).toHaveLength(2);
    const clockAt = (index: number) => Number(lines[index]!.split(",")[0]);
    expect(clockAt(headers[1]! - 3)).toBeGreaterThan(39);
    expect(clockAt(headers[1]! + 1)).toBe(0);
  });

  test.each([
    { fileName: "finish-as-printed-1.csv", missing: 3, spikes: 2, overflows: 0 },
    { fileName: "finish-as-printed-2.csv", missing: 4, spikes: 1, overflows: 3 },
  ])("$fileName holds the faults that a home-made logger makes", ({ fileName, missing, spikes, overflows }) => {
    const cells = textOf(fileName)
      .split("\n")
      .filter((line) => /^\d/.test(line))
      .flatMap((line) => line.split(","));
    const count = (wanted: string) => cells.filter((cell) => cell === wanted).length;
    expect({ missing: count(""), spikes: count("3276.7"), overflows: count("ovf") }).toEqual({
      missing,
      spikes,
      overflows,
    });
  });

  test("the kitchen-scale table has eight rows of four numbers and no clock", () => {
    const rows = textOf("kitchen-scale.txt")
      .trim()
      .split("\n")
      .filter((line) => /^\s*\d/.test(line));
    expect(rows.map((row) => row.trim().split(/\s+/).length)).toEqual(Array(8).fill(4));
  });
});

test("stairs rest at the start, after the top and at the end, and come down without a second top", () => {
  const throttles = stairs({ levels: [0.5, 1], hold: 5, rest: 2 }).map((step) => step.throttle);
  expect(throttles).toEqual([0, 0.5, 1, 0, 0.5, 0]);
});

test("spoiling touches as many rows as it was asked to and no other cell", () => {
  const rows = Array.from({ length: 60 }, () => ["t", "c", "f", "x"]);
  spoil(rows, { missing: 2, spikes: 3, overflows: 1 }, { force: 2, mayBeMissing: [3], spike: "9" }, randomSource(1, 1));
  const changed = rows.filter((row) => row.join() !== "t,c,f,x").map((row) => row.join());
  expect(changed.sort()).toEqual(["t,c,9,x", "t,c,9,x", "t,c,9,x", "t,c,f,", "t,c,f,", "t,c,ovf,x"]);
});

test.each([
  { value: -0.04, decimals: 1, text: "0.0", why: "no minus zero" },
  { value: -0.06, decimals: 1, text: "-0.1", why: "a true minus stays" },
  { value: 2.5, decimals: 2, text: "2.50", why: "trailing zeros are written" },
])("$value with $decimals decimals is written $text ($why)", ({ value, decimals, text }) => {
  expect(fixed(value, decimals)).toBe(text);
});

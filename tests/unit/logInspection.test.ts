import { expect, test } from "vitest";
import { inspectLog } from "../../shared/log/inspectLog.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { LogInspection } from "../../shared/model/log.ts";

const inspect = (text: string) => inspectLog(readLog(new TextEncoder().encode(text), "stand.csv"));
const HEADER = "time (s),thrust (N),rpm\n";
const rows = (from: number, count: number) =>
  Array.from({ length: count }, (_, i) => `${from + i},${i / 2},${1000 + i}\n`).join("");

test("a clean log has nothing to look at and fits the model", () => {
  const inspection = inspect(HEADER + rows(0, 40));
  expect(inspection.warnings).toEqual([]);
  expect(LogInspection.parse(inspection)).toEqual(inspection);
});

test.each([
  {
    why: "time that jumps back",
    text: HEADER + rows(0, 40) + rows(0, 40),
    code: "log.time-jumps-back",
    says: "row 41",
  },
  {
    why: "a restart with a new header",
    text: HEADER + rows(0, 40) + HEADER + rows(0, 40),
    code: "log.time-jumps-back",
    says: "line 43: time in column 1",
  },
  {
    why: "a time that stands twice",
    text: `${HEADER}${rows(0, 40)}39,5,900\n`,
    code: "log.time-repeats",
    says: "line 42",
  },
  {
    why: "no time in a log too long for a notebook",
    text: `thrust (N),rpm\n${"1,1000\n2,1400\n1,1001\n".repeat(70)}`,
    code: "log.no-time",
    says: "time",
  },
  { why: "no thrust", text: "time (s),rpm\n1,1000\n2,1400\n", code: "log.no-thrust", says: "thrust" },
  {
    why: "no rotation rate",
    text: "time (s),thrust (N)\n1,1\n2,4\n",
    code: "log.no-rotation-rate",
    says: "rotation rate",
  },
  {
    why: "thrust without a unit",
    text: `time (s),thrust,rpm\n${rows(0, 40)}`,
    code: "log.unsure-role",
    says: 'column 2 "thrust"',
  },
])("$why is warned of: $code", ({ text, code, says }) => {
  const { warnings } = inspect(text);
  expect(warnings.map((one) => one.code)).toEqual([code]);
  expect(warnings[0]!.message).toContain(says);
});

test("readings written down by hand are not asked for a time", () => {
  expect(inspect("thrust (N),rpm\n1,1000\n2,1400\n1,1001\n").warnings).toEqual([]);
});

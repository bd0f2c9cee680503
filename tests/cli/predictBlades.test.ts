import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const DABCHICK = ["predict", "--geometry", "samples/blades/dabchick-76mm.csv", "--blades", "3", "--rpm", "4200rpm"];

test("predict with a geometry tells thrust and torque at rest and where the power goes", async () => {
  const { code, stdout, stderr } = await runCli(...DABCHICK);
  expect(stderr).toBe("");
  expect(code).toBe(0);
  expect(stdout).toContain("Where the shaft power goes:");
  expect(stdout).toMatch(/Drag of the sections +\d/);
  expect(stdout).toContain("Note: ");
});

test("predict with a geometry and advance ratios is a sweep whose thrust falls, JSON in SI", async () => {
  const { code, stdout } = await runCli(...DABCHICK, "--advance-ratios", "0 0.4 0,8", "--roughness", "50um", "--json");
  expect(code).toBe(0);
  const { points } = JSON.parse(stdout);
  expect(points.map(({ advanceRatio }: { advanceRatio: number }) => advanceRatio.toFixed(6))).toEqual([
    "0.000000",
    "0.400000",
    "0.800000",
  ]);
  expect(points[1].thrust).toBeLessThan(points[0].thrust);
  expect(points[2].thrust).toBeLessThan(points[1].thrust);
});

test("a negative rotation rate may stand after its option: the propeller pushes astern", async () => {
  const { code, stdout } = await runCli(...DABCHICK.slice(0, -1), "-4200rpm", "--json");
  expect(code).toBe(0);
  expect(JSON.parse(stdout).points[0].thrust).toBeLessThan(0);
});

test.each([
  {
    words: ["predict", "--geometry", "samples/blades/dabchick-76mm.csv", "--rpm", "4200rpm"],
    said: "--blades: this option is missing",
  },
  { words: ["predict", "--geometry", "no-such.csv", "--blades", "3", "--rpm", "4200rpm"], said: "no-such.csv" },
  { words: [...DABCHICK, "--diameter", "76in"], said: "inches read as millimetres" },
  { words: [...DABCHICK, "--advance-ratios", "0 fast"], said: '--advance-ratios: "fast" is no number' },
])("refused, exit 2: $said", async ({ words, said }) => {
  const { code, stdout, stderr } = await runCli(...words);
  expect(code).toBe(2);
  expect(stdout).toBe("");
  expect(stderr).toContain(said);
});

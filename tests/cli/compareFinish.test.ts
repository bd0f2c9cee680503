import { resolve } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "./runCli.ts";

const log = (name: string) => resolve(import.meta.dirname, "../../samples/logs", name);
const MOTOR = [
  ...["--kv", "455rpm/V", "--resistance", "0.12ohm", "--no-load-current", "0.55A"],
  ...["--controller-resistance", "0.008ohm"],
];
const LOGS = ["compare", log("finish-as-printed-1.csv"), log("finish-sanded-1.csv"), "--diameter", "76mm"];
const BLADES = ["--blades", "3", "--pitch-ratio", "1.0", "--chord", "21mm"];

test("compare with described blades says what sanding did to their sections, and that the outline was assumed", async () => {
  const { code, stdout } = await runCli(...LOGS, ...MOTOR, ...BLADES);
  expect(code).toBe(0);
  expect(stdout).toContain("cut the section drag at 0.7 R from");
  expect(stdout).toContain("hydraulically smooth surface");
  expect(stdout).toContain("not of this propeller");
});

test("as JSON the same stands under finish, beside the comparison", async () => {
  const { stdout } = await runCli(...LOGS, ...MOTOR, ...BLADES, "--json");
  const { thrustCoefficientRatio, finish } = JSON.parse(stdout);
  expect(thrustCoefficientRatio.value).toBeGreaterThan(1);
  expect(finish.change.dragRatio.interval95[1]).toBeLessThan(1);
});

test("without torque the section drag can not be told, and the reason is", async () => {
  const { code, stderr } = await runCli(...LOGS, ...BLADES);
  expect(code).toBe(2);
  expect(stderr).toContain("torque column, or the constants of the motor");
});

test("half a description is refused with the option that lacks", async () => {
  const { code, stderr } = await runCli(...LOGS, ...MOTOR, "--blades", "3");
  expect(code).toBe(2);
  expect(stderr).toContain("--pitch-ratio");
});

test("nine blades are more than the series has, and the option is named", async () => {
  const { code, stderr } = await runCli(...LOGS, ...MOTOR, "--blades", "9", "--pitch-ratio", "1", "--chord", "21mm");
  expect(code).toBe(2);
  expect(stderr).toContain("--blades");
});

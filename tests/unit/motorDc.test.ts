import { describe, expect, test } from "vitest";
import { freeRunningCurrent, noLoadCurrentAt } from "../../shared/motor/motorConstants.ts";
import { motorProblems } from "../../shared/motor/motorProblems.ts";
import { shaftFromElectrical } from "../../shared/motor/shaftFromElectrical.ts";
import { relative } from "../relative.ts";

const MOTOR = { speedConstant: 52.36, resistance: 0.1, noLoadCurrent: 0.6, noLoadCurrentSlope: 0.001 };

test("with a no-load current that grows with speed the free-running current is where the torque vanishes", () => {
  const voltage = 14.8;
  const current = freeRunningCurrent(MOTOR, voltage);
  const omega = MOTOR.speedConstant * (voltage - current * MOTOR.resistance);
  expect(current).toSatisfy(relative(noLoadCurrentAt(MOTOR, omega), 1e-12));
  const rotationRate = omega / (2 * Math.PI);
  const free = shaftFromElectrical({ motor: MOTOR, voltage, current, rotationRate, controllerResistance: 0 });
  expect(Math.abs(free.torque)).toBeLessThan(1e-14);
});

describe("plausibility", () => {
  test("an ordinary motor raises nothing", () => {
    expect(motorProblems(MOTOR, 14.8)).toEqual([]);
  });

  test.each([
    [{ ...MOTOR, resistance: 0 }, "motor.zero-resistance", /0 Ω/],
    [
      { ...MOTOR, speedConstant: 500 },
      "motor.speed-constant-unit",
      /4775 rpm\/V \(70665 rpm .* If the number is in rpm\/V, it is 500 rpm\/V \(7400 rpm without load at 14\.8 V\)/,
    ],
    [{ ...MOTOR, speedConstant: 500 / 60 }, "motor.speed-constant-unit", /rev\/s per volt, it is 500 rpm\/V/],
    [
      { ...MOTOR, resistance: 100 },
      "motor.no-load-above-stall",
      /no-load current is 0\.\d+ A and the stall current 0\.148 A/,
    ],
  ])("%o is warned of as %s", (motor, code, message) => {
    const found = motorProblems(motor, 14.8);
    expect(found.map((warning) => warning.code)).toEqual([code]);
    expect(found[0]!.message).toMatch(message);
  });

  test("without a voltage nothing is said of the stall current", () => {
    expect(motorProblems({ ...MOTOR, resistance: 100 })).toEqual([]);
  });
});

import { describe, expect, test } from "vitest";
import {
  bestEfficiencyPoint,
  freeRunningCurrent,
  greatestPowerPoint,
  motorAtCurrent,
} from "../../shared/motor/dcMotor.ts";
import { motorProblems } from "../../shared/motor/motorProblems.ts";
import { relative } from "../relative.ts";

const MOTOR = { speedConstant: 52.36, resistance: 0.1, noLoadCurrent: 0.6, noLoadCurrentSlope: 0.001 };
const at = { motor: MOTOR, voltage: 14.8 };

describe("with a no-load current that grows with speed", () => {
  test("the free-running current is where the torque vanishes", () => {
    const free = motorAtCurrent({ ...at, current: freeRunningCurrent(at) });
    expect(Math.abs(free.torque)).toBeLessThan(1e-15);
    expect(free.current).toSatisfy(relative(MOTOR.noLoadCurrent + 0.001 * free.angularVelocity, 1e-12));
  });

  test.each([
    ["best efficiency", bestEfficiencyPoint(at), "efficiency"],
    ["greatest power", greatestPowerPoint(at), "shaftPower"],
  ] as const)("no neighbouring current beats the point of %s", (_, best, quantity) => {
    for (const factor of [0.99, 0.999, 1.001, 1.01]) {
      expect(motorAtCurrent({ ...at, current: best.current * factor })[quantity]).toBeLessThan(best[quantity]);
    }
  });
});

test.each([
  [{ ...MOTOR, speedConstant: 0 }, 14.8, /speed constant K_v is 0/],
  [{ ...MOTOR, resistance: -1 }, 14.8, /winding resistance is -1/],
  [MOTOR, 0, /motor voltage is 0/],
  [{ ...MOTOR, resistance: 0 }, 14.8, /winding resistance is 0/],
  [{ ...MOTOR, noLoadCurrent: 0, noLoadCurrentSlope: 0 }, 14.8, /no-load current is 0/],
  [{ ...MOTOR, resistance: 40 }, 14.8, /no-load current 0\.\d+ A is not below the stall current 0\.370 A/],
])("%o at %d V has no best point: %s", (motor, voltage, message) => {
  expect(() => bestEfficiencyPoint({ motor, voltage })).toThrow(message);
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

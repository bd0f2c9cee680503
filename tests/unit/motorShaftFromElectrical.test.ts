import { expect, test } from "vitest";
import { shaftFromElectrical, shaftSensitivities } from "../../shared/motor/shaftFromElectrical.ts";
import { relative } from "../relative.ts";

const READING = {
  voltage: 15.5,
  current: 5,
  rotationRate: 50,
  motor: { speedConstant: 52.36, resistance: 0.1, noLoadCurrent: 0.6, noLoadCurrentSlope: 0.001 },
  controllerResistance: 0.01,
};

test("power in is power out plus heat and friction", () => {
  const { motorCurrent, shaftPower } = shaftFromElectrical(READING);
  const omega = 100 * Math.PI;
  const friction = ((0.6 + 0.001 * omega) * omega) / 52.36;
  expect(shaftPower + friction + motorCurrent ** 2 * 0.11).toSatisfy(relative(77.5, 1e-12));
});

test("a reading below the no-load power gives its negative torque, unhidden", () => {
  const { torque, shaftPower } = shaftFromElectrical({ ...READING, current: 0.1 });
  expect(torque).toBeLessThan(0);
  expect(shaftPower).toBeLessThan(0);
});

test("without any resistance the motor current is U I over the induced voltage", () => {
  const ideal = { ...READING, motor: { ...READING.motor, resistance: 0 }, controllerResistance: 0 };
  expect(shaftFromElectrical(ideal).motorCurrent).toSatisfy(relative((77.5 * 52.36) / (100 * Math.PI), 1e-14));
});

test("no power at rest is no current", () => {
  expect(shaftFromElectrical({ ...READING, current: 0, rotationRate: 0 }).motorCurrent).toBe(0);
});

test("power from a generating motor is followed as far as a current exists", () => {
  expect(shaftFromElectrical({ ...READING, current: -1 }).motorCurrent).toBeLessThan(0);
  expect(() => shaftFromElectrical({ ...READING, current: -100 })).toThrow(/-?1550 W into the controller/);
});

type Reading = typeof READING;

const moved: Record<keyof ReturnType<typeof shaftSensitivities>["torque"], (r: Reading, by: number) => Reading> = {
  voltage: (r, by) => ({ ...r, voltage: r.voltage + by }),
  current: (r, by) => ({ ...r, current: r.current + by }),
  rotationRate: (r, by) => ({ ...r, rotationRate: r.rotationRate + by }),
  speedConstant: (r, by) => ({ ...r, motor: { ...r.motor, speedConstant: r.motor.speedConstant + by } }),
  motorResistance: (r, by) => ({ ...r, motor: { ...r.motor, resistance: r.motor.resistance + by } }),
  noLoadCurrent: (r, by) => ({ ...r, motor: { ...r.motor, noLoadCurrent: r.motor.noLoadCurrent + by } }),
  noLoadCurrentSlope: (r, by) => ({ ...r, motor: { ...r.motor, noLoadCurrentSlope: r.motor.noLoadCurrentSlope + by } }),
  controllerResistance: (r, by) => ({ ...r, controllerResistance: r.controllerResistance + by }),
};

test.each(Object.keys(moved) as (keyof typeof moved)[])("the sensitivity to %s is the numeric derivative", (input) => {
  const step = 1e-6;
  const { torque, shaftPower } = shaftSensitivities(READING);
  const [low, high] = [-step, step].map((by) => shaftFromElectrical(moved[input](READING, by)));
  expect(torque[input]).toSatisfy(relative((high!.torque - low!.torque) / (2 * step), 1e-6));
  expect(shaftPower[input]).toSatisfy(relative((high!.shaftPower - low!.shaftPower) / (2 * step), 1e-6));
});

test("at rest without power there is no sensitivity", () => {
  expect(() => shaftSensitivities({ ...READING, current: 0, rotationRate: 0 })).toThrow(/at rest and draws no power/);
});

test.each([
  [{ ...READING, rotationRate: -1 }, /rotation rate is -1/],
  [{ ...READING, controllerResistance: -1 }, /controller resistance is -1/],
  [{ ...READING, motor: { ...READING.motor, speedConstant: 0 } }, /K_v is 0/],
  [{ ...READING, voltage: Number.NaN }, /voltage/],
])("what is not physical is refused: %#", (reading, message) => {
  expect(() => shaftFromElectrical(reading)).toThrow(message);
});

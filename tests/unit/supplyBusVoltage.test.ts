import { expect, test } from "vitest";
import { busVoltage, greatestSupplyPower } from "../../shared/supply/busVoltage.ts";

const SUPPLY = { openCircuitVoltage: 16, resistance: 0.15 };

test("without load the voltage is the open-circuit voltage", () => {
  expect(busVoltage({ supply: SUPPLY, power: 0 })).toEqual({ voltage: 16, current: 0 });
});

test("without resistance the voltage stays and there is no greatest power", () => {
  const stiff = { ...SUPPLY, resistance: 0 };
  expect(busVoltage({ supply: stiff, power: 1600 })).toEqual({ voltage: 16, current: 100 });
  expect(greatestSupplyPower(stiff)).toBe(Infinity);
});

test("a collapse names load, source and the greatest power, with its own code", () => {
  expect(() => busVoltage({ supply: SUPPLY, power: 430 })).toThrow(
    expect.objectContaining({
      problem: expect.objectContaining({
        code: "supply.collapse",
        found: "The supply collapses under 430 W: the most that 16.0 V behind 0.150 Ω can give is 427 W",
      }),
    }),
  );
});

test.each([
  [{ supply: { ...SUPPLY, openCircuitVoltage: 0 }, power: 1 }, /open-circuit voltage is 0/],
  [{ supply: { ...SUPPLY, resistance: -1 }, power: 1 }, /supply resistance is -1/],
  [{ supply: SUPPLY, power: Number.NaN }, /^power is/],
])("%o is refused", (input, message) => {
  expect(() => busVoltage(input)).toThrow(message);
});

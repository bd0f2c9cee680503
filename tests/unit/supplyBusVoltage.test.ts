import { expect, test } from "vitest";
import { greatestSupplyPower, supplyCollapse, voltageUnderPower } from "../../shared/supply/busVoltage.ts";

const SUPPLY = { openCircuitVoltage: 16, resistance: 0.15 };

test("without load the voltage is the open-circuit voltage", () => {
  expect(voltageUnderPower(16, 0.15, 0)).toBe(16);
});

test("without resistance the voltage stays and there is no greatest power", () => {
  expect(voltageUnderPower(16, 0, 1600)).toBe(16);
  expect(greatestSupplyPower({ ...SUPPLY, resistance: 0 })).toBe(Infinity);
});

test("a collapse names load, source and the greatest power, with its own code", () => {
  expect(supplyCollapse(SUPPLY, "430 W").problem).toMatchObject({
    code: "supply.collapse",
    found: "The supply collapses under 430 W: the most that 16.0 V behind 0.150 Ω can give is 427 W",
  });
});

import { expect, test } from "vitest";
import { greatestSupplyPower, voltageUnderPower } from "../../shared/supply/busVoltage.ts";
import { relative } from "../relative.ts";

/** U² − U_oc U + R_s P = 0 by hand: U_oc 16 V, R_s 0.15 Ω. 100 W: (16 + sqrt(256 − 60))/2 = 15 V exactly. */
const SUPPLY = { openCircuitVoltage: 16, resistance: 0.15 };

test.each([
  [100, 15, 6.66666666666667],
  [200, 13.8309518948453, 14.4603207010313],
])("%d W are delivered at %d V and %d A", (power, voltage, current) => {
  const found = voltageUnderPower(SUPPLY.openCircuitVoltage, SUPPLY.resistance, power)!;
  expect(found).toSatisfy(relative(voltage, 1e-13));
  expect(power / found).toSatisfy(relative(current, 1e-13));
});

test("the greatest power is that of maximum power transfer, at half the open-circuit voltage", () => {
  // 16²/(4·0.15) = 426.666... W, 8 V and 53.33 A; with 0.6 Ω 106.666... W.
  expect(greatestSupplyPower(SUPPLY)).toSatisfy(relative(1280 / 3, 1e-14));
  expect(greatestSupplyPower({ ...SUPPLY, resistance: 0.6 })).toSatisfy(relative(320 / 3, 1e-14));
  expect(voltageUnderPower(16, 0.15, 426.66)).toBeGreaterThan(8);
  expect(voltageUnderPower(16, 0.15, 430)).toBeNull();
});

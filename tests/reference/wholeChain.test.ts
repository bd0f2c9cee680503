import { expect, test } from "vitest";
import { recipeFromGuesses } from "../../shared/bench/recipeFromGuesses.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { guessRoles } from "../../shared/log/guessRoles.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { DriveRequest } from "../../shared/model/drive.ts";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { parseQuantity } from "../../shared/quantity/parseQuantity.ts";
import { wholeChainLog } from "./wholeChainLog.ts";

/**
 * The whole chain, log to water, calculated outside the project with Python 3.11, numpy 2.4.6 and scipy 1.17.1 on the
 * text that `wholeChainLog()` writes:
 * - columns by `numpy.genfromtxt`; tare by `numpy.polyfit(t, load, 1)` over all samples at command 1000 and 0 rpm;
 * - plateaus: each block of constant command less its first 3 s; means by `numpy.mean`; 1 gf = 9.80665e-3 N;
 * - shaft power from P = U I, I_m = (-w/K_v + sqrt((w/K_v)² + 4 R P))/(2 R), Q = (I_m - I_0)/K_v with K_v 490 rpm/V,
 *   R = 0.12 + 0.008 ohm, I_0 0.55 A (Erickson & Maksimovic 2001, ch. 3; any dc-motor text);
 * - K_T and C_P by `scipy.optimize.curve_fit(lambda x, k: k * x, ...)` on rho n² D⁴ and rho n³ D⁵ with D 76 mm,
 *   rho 998.5980363 kg/m³ (IAPWS SR6-08 at 18 °C, iapws 1.5.2); exponent by `numpy.polyfit(log n, log T, 1)`;
 * - sea water of 12 °C, S 33 by the EOS-80 polynomial (Fofonoff & Millard, Unesco Technical Papers 44, 1983);
 * - operating point on 22.2 V, 50 milliohm by `scipy.optimize.fsolve` on speed, motor current and bus voltage.
 */
const OUTSIDE = {
  thrusts: [2.40051803, 3.75124532, 6.01764895, 9.60273864, 6.66832818, 2.81720897],
  rotationRates: [19.99937037, 24.99968519, 31.66662963, 40.00034259, 33.33383333, 21.66717593],
  torques: [0.0285785, 0.04454475, 0.07134249, 0.11351817, 0.07899544, 0.03353482],
  thrustCoefficient: 0.18014019,
  powerCoefficient: 0.1762616,
  exponent: 1.9999865,
  seaDensity: 1025.036054833905,
  halfThrottle: { rpm: 4161.883788497958, thrust: 29.640226371502642, motorCurrent: 18.550602244201354 },
  fullThrottle: { rpm: 6727.589490415944, thrust: 77.449850616519, motorCurrent: 47.585536684063925 },
};

const MOTOR = Motor.parse({
  name: "chain",
  speedConstant: parseQuantity("490 rpm/V", "speedConstant"),
  resistance: 0.12,
  noLoadCurrent: 0.55,
});
const CONTROLLER = Controller.parse({ name: "chain", resistance: 0.008 });

function reduced() {
  const table = readLog(new TextEncoder().encode(wholeChainLog()), "chain.csv");
  const recipe = recipeFromGuesses({ guesses: guessRoles(table), fluid: parseFluid("fresh 18C") });
  const propeller = Propeller.parse({ name: "chain", diameter: 0.076, diameterUncertainty: 0 });
  return reduceRun({
    table,
    recipe,
    propeller,
    motor: MOTOR,
    controller: CONTROLLER,
    source: { sha256: "0".repeat(64), program: "test" },
  });
}

const relative = (found: number, wanted: number) => Math.abs(found / wanted - 1);

test("plateaus of the log agree with numpy's means", () => {
  const { plateaus } = reduced();
  expect(plateaus).toHaveLength(OUTSIDE.thrusts.length);
  plateaus.forEach((plateau, i) => {
    expect(relative(plateau.rotationRate.value, OUTSIDE.rotationRates[i]!)).toBeLessThan(5e-4);
    expect(relative(plateau.thrust.value, OUTSIDE.thrusts[i]!)).toBeLessThan(2e-3);
    const torque = plateau.shaftPower!.value / (2 * Math.PI * plateau.rotationRate.value);
    expect(relative(torque, OUTSIDE.torques[i]!)).toBeLessThan(1e-2);
  });
});

test("the coefficients agree with scipy's fits, and their intervals hold them", () => {
  const { thrustCoefficient, powerCoefficient, exponent, powerSource } = reduced();
  expect(relative(thrustCoefficient.value, OUTSIDE.thrustCoefficient)).toBeLessThan(1e-3);
  expect(relative(powerCoefficient!.value, OUTSIDE.powerCoefficient)).toBeLessThan(5e-3);
  expect(Math.abs(exponent!.value - OUTSIDE.exponent)).toBeLessThan(2e-3);
  expect(powerSource).toBe("motorConstants");
  const [low, high] = thrustCoefficient.interval95;
  expect(low).toBeLessThan(OUTSIDE.thrustCoefficient);
  expect(high).toBeGreaterThan(OUTSIDE.thrustCoefficient);
});

test.each([
  { throttle: 0.5, outside: OUTSIDE.halfThrottle },
  { throttle: 1, outside: OUTSIDE.fullThrottle },
])("the prediction in the sea at throttle $throttle agrees with the outside solution", ({ throttle, outside }) => {
  const { density } = fluidProperties(parseFluid("sea 12C 33"));
  expect(relative(density, OUTSIDE.seaDensity)).toBeLessThan(1e-8);
  const point = operatingPoint(
    DriveRequest.parse({
      speedConstant: MOTOR.speedConstant,
      motorResistance: MOTOR.resistance,
      noLoadCurrent: MOTOR.noLoadCurrent,
      controllerResistance: CONTROLLER.resistance,
      supplyVoltage: 22.2,
      supplyResistance: 0.05,
      diameter: 0.076,
      thrustCoefficient: OUTSIDE.thrustCoefficient,
      torqueCoefficient: OUTSIDE.powerCoefficient / (2 * Math.PI),
      density,
      throttle,
    }),
  );
  // The recorded coefficients carry eight digits, so the agreement can not be asked for beyond 1e-6.
  expect(relative(point.rotationRate * 60, outside.rpm)).toBeLessThan(1e-6);
  expect(relative(point.thrust, outside.thrust)).toBeLessThan(1e-6);
  expect(relative(point.motorCurrent, outside.motorCurrent)).toBeLessThan(1e-6);
});

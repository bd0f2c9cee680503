import { expect, test } from "vitest";
import { shaftFromElectrical } from "../../shared/motor/shaftFromElectrical.ts";
import { relative } from "../relative.ts";

/**
 * U 15.5 V, I_bus 5 A, 3000 rpm, R_m + R_c 0.11 Ω, K_v 500 rpm/V, I_0 0.6 A: the quadratic
 * I_m (ω/K_v + 0.11 I_m) = 77.5 W, by numpy 2.4.6 in python 3:
 *   w = 100*np.pi; kv = 500*2*np.pi/60; I = np.roots([0.11, w/kv, -77.5]).max(); Q = (I - 0.6)/kv
 * and once more by scipy 1.17.1: scipy.optimize.brentq(lambda I: I*(w/kv + 0.11*I) - 77.5, 0, 100, xtol=1e-14).
 */
test("torque and motor current from a power meter and a tachometer are the root of the power balance", () => {
  const found = shaftFromElectrical({
    voltage: 15.5,
    current: 5,
    rotationRate: 50,
    motor: { speedConstant: (500 * 2 * Math.PI) / 60, resistance: 0.1, noLoadCurrent: 0.6, noLoadCurrentSlope: 0 },
    controllerResistance: 0.01,
  });
  expect(found.motorCurrent).toSatisfy(relative(10.784428525335, 1e-12));
  expect(found.torque).toSatisfy(relative(0.194508257085, 1e-11));
  expect(found.shaftPower).toSatisfy(relative(0.194508257085 * 100 * Math.PI, 1e-11));
});

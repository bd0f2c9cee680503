import { describe, expect, test } from "vitest";
import { randomSource, slowNoise } from "../../samples/generator/random.ts";
import { electricalState, runThruster, type Thruster } from "../../samples/generator/thruster.ts";
import { TRUE_MOTORS, TRUE_PROPELLERS, WATER_DENSITY } from "../../samples/generator/truth.ts";
import { pcg32 } from "../../shared/numeric/pcg32.ts";

/**
 * First outputs of the 32-bit generator for seed 42 and stream 54, as its author's demonstration program prints them:
 * M. E. O'Neill, PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random Number
 * Generation, HMC-CS-2014-0905 (2014), accompanying C code, program pcg32-demo, round 1. From memory.
 */
const PCG32_DEMO = [0xa15c02b7, 0x7b47f409, 0xba1d3330, 0x83d2f293, 0xbfa4784b, 0xcbed606e];

test("the random generator gives the numbers its author prints", () => {
  const next = pcg32(42, 54);
  expect(PCG32_DEMO.map(() => next())).toEqual(PCG32_DEMO);
});

describe("the normal deviates", () => {
  /**
   * Moments 0, 1, 0, 3 of the normal distribution; standard errors of the estimates from n values are
   * 1/sqrt(n), sqrt(2/n), sqrt(15/n), sqrt(96/n): Kendall & Stuart, The Advanced Theory of Statistics 1, 3rd ed.
   * (1969), section 10.5. From memory. Four standard errors are allowed.
   */
  test("have the moments of the normal distribution", () => {
    const count = 40_000;
    const { normal } = randomSource(3, 5);
    const values = Array.from({ length: count }, normal);
    const raw = (power: number) => values.reduce((sum, value) => sum + value ** power, 0) / count;
    const moments = [
      [raw(1), 0, 1],
      [raw(2), 1, 2],
      [raw(3), 0, 15],
      [raw(4), 3, 96],
    ] as const;
    for (const [found, expected, variance] of moments) {
      expect(Math.abs(found - expected)).toBeLessThan(4 * Math.sqrt(variance / count));
    }
  });

  /** Autocorrelation phi^k of a first-order process: Box & Jenkins, Time Series Analysis (1970), section 3.2.3. */
  test("with memory have the correlation of a first-order process", () => {
    const count = 40_000;
    const next = slowNoise(randomSource(4, 6), 2, 0.8);
    const values = Array.from({ length: count }, next);
    const product = (lag: number) =>
      values.slice(lag).reduce((sum, value, i) => sum + value * values[i]!, 0) / (count - lag);
    expect(product(0)).toBeCloseTo(4, 0);
    expect(product(1) / product(0)).toBeCloseTo(0.8, 1);
    expect(product(3) / product(0)).toBeCloseTo(0.512, 1);
  });
});

/**
 * Steady running of motor A with the sanded propeller on a supply of 10 V and 0.02 ohm, controller 0.008 ohm, throttle
 * 1 and 0.5. Balance of torque K_t (I_m - I_0 - b omega) = K_Q rho n^2 D^5 with delta U_oc - omega/K_v =
 * I_m (R_m + R_c + delta^2 R_s), solved with scipy 1.17.1 `brentq` (xtol 1e-13), outside this project.
 */
const STEADY = [
  { throttle: 1, rotationRate: 58.81519914305637, thrust: 32.200876347943456, motorCurrent: 14.953870097575754 },
  { throttle: 0.5, rotationRate: 32.69246977524126, thrust: 9.949104885410632, motorCurrent: 5.067353014427239 },
];

describe("the simulated thruster", () => {
  const thruster: Thruster = {
    motor: TRUE_MOTORS.a,
    propeller: TRUE_PROPELLERS.sanded,
    controllerResistance: 0.008,
    supply: { openCircuitVoltage: 10, resistance: 0.02 },
    density: WATER_DENSITY,
  };

  test.each(STEADY)("settles at throttle $throttle where the torques balance", (steady) => {
    const [moment] = runThruster(thruster, [{ duration: 9, throttle: steady.throttle }], [8]);
    expect(moment!.rotationRate).toBeCloseTo(steady.rotationRate, 6);
    expect(moment!.thrust).toBeCloseTo(steady.thrust, 5);
    expect(moment!.current).toBeCloseTo(steady.throttle * steady.motorCurrent, 6);
  });

  test("takes from the supply what the motor's winding, the controller and the back voltage take", () => {
    const omega = 200;
    const { motorCurrent, current, voltage } = electricalState(thruster, 0.8, omega);
    const taken = motorCurrent * (omega / thruster.motor.speedConstant) + motorCurrent ** 2 * (0.1207 + 0.008);
    expect(voltage * current).toBeCloseTo(taken, 9);
  });

  test("stays at rest at zero throttle and comes to rest after running", () => {
    const schedule = [
      { duration: 1, throttle: 0 },
      { duration: 3, throttle: 1 },
      { duration: 8, throttle: 0 },
    ];
    const [before, running, after] = runThruster(thruster, schedule, [0.9, 3.9, 11.9]);
    expect(before!.rotationRate).toBe(0);
    expect(running!.rotationRate).toBeGreaterThan(50);
    expect(after!.rotationRate).toBe(0);
  });

  /** An open propeller has a static merit under 1; small ones 0.3 to 0.7: common practice, no source. */
  test.each(Object.entries(TRUE_PROPELLERS).filter(([name]) => name !== "none"))(
    "has a believable static merit for %s",
    (_, propeller) => {
      const { thrustCoefficient, torqueCoefficient } = propeller;
      const merit = thrustCoefficient ** 1.5 / (2 * Math.PI * torqueCoefficient * Math.sqrt(Math.PI / 2));
      expect(merit).toBeGreaterThan(0.3);
      expect(merit).toBeLessThan(0.6);
    },
  );
});

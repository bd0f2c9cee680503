/**
 * What is really so in the invented tank. Only the generator and the tests of recovery read this file: the logs and the
 * description of the demonstration project must not give the answers away.
 */

/** Density of fresh water at 18 °C, kg/m³: Tanaka et al., Metrologia 38 (2001) 301, rounded. */
export const WATER_DENSITY = 998.598;

export interface TruePropeller {
  /** Diameter, m; it differs a little from what a calliper said. */
  readonly diameter: number;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
}

/**
 * Coefficients obey the square law exactly (no Reynolds effect). Static merit K_T^1.5 / (2 pi K_Q sqrt(pi/2)) is 0.34
 * as printed and 0.52 to 0.55 sanded.
 */
export const TRUE_PROPELLERS = {
  asPrinted: { diameter: 0.07604, thrustCoefficient: 0.17, torqueCoefficient: 0.026 },
  sanded: { diameter: 0.07596, thrustCoefficient: 0.28, torqueCoefficient: 0.034 },
  pitch08: { diameter: 0.07602, thrustCoefficient: 0.21, torqueCoefficient: 0.0225 },
  pitch10: { diameter: 0.07598, thrustCoefficient: 0.278, torqueCoefficient: 0.0338 },
  pitch12: { diameter: 0.07605, thrustCoefficient: 0.335, torqueCoefficient: 0.0475 },
  /** Nothing on the shaft. */
  none: { diameter: 0.076, thrustCoefficient: 0, torqueCoefficient: 0 },
} as const satisfies Record<string, TruePropeller>;

/** Parts of the coefficients at rest that go with J and J². */
export interface TrueFall {
  readonly thrust: readonly [number, number];
  readonly torque: readonly [number, number];
}

/** Of pitch ratio 1.0: K_T = K_T(0) (1 - 0.8 J - 0.31 J²) falls to zero at J 0.9217. */
export const TRUE_FALL: TrueFall = { thrust: [-0.8, -0.31], torque: [-0.33, -0.36] };

/** Relative standard deviation of K_T from one mounting to the next; K_Q follows part of it. */
export const MOUNTING_SCATTER = 0.01;
export const MOUNTING_SCATTER_TORQUE = 0.006;

export interface TrueMotor {
  /** Speed constant, rad/(V·s). */
  readonly speedConstant: number;
  /** Winding resistance, ohm. */
  readonly resistance: number;
  /** No-load current at rest, A. */
  readonly noLoadCurrent: number;
  /** Growth of the no-load current with angular velocity, A·s/rad. */
  readonly noLoadCurrentSlope: number;
  /** Rotor, shaft, propeller and the water that turns with it, kg·m². */
  readonly inertia: number;
}

const perMinute = (rpmPerVolt: number) => (rpmPerVolt * 2 * Math.PI) / 60;

export const TRUE_MOTORS = {
  a: {
    speedConstant: perMinute(453.8),
    resistance: 0.1207,
    noLoadCurrent: 0.54,
    noLoadCurrentSlope: 0.00081,
    inertia: 2.1e-4,
  },
  b: {
    speedConstant: perMinute(621.1),
    resistance: 0.0846,
    noLoadCurrent: 0.81,
    noLoadCurrentSlope: 0.00118,
    inertia: 2.0e-4,
  },
} as const satisfies Record<string, TrueMotor>;

/** Torque that the water in the gaps of flooded motor A takes, k ω^m: N·m with ω in rad/s. */
export const TRUE_WET_LOSS = { coefficient: 1.3e-7, exponent: 1.75 } as const;

/** Resistance of the controller in the motor's current path, ohm. */
export const CONTROLLER_RESISTANCE = 0.0081;

/** Bench supply with its leads as the controller sees it: volt at no load, ohm. */
export const BENCH_SUPPLY = { openCircuitVoltage: 10.02, resistance: 0.021 } as const;

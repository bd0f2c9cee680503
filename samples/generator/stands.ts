import type { Stand } from "./instruments.ts";

const ELECTRICAL = { voltageGain: 1.002, currentGain: 0.996, currentOffset: 0.02 } as const;

/** The co-op's tank stand: a load cell over a beam, no torque. */
export const TANK_STAND: Stand = {
  ...ELECTRICAL,
  forceGain: 1.003,
  forceTare: 0.37,
  forceDrift: 0.06,
  forceNoise: 0.12,
  slosh: 0.25,
  shake: 0.012,
  torqueGain: 1,
  torqueTare: 0,
  torqueNoise: 0,
  rotationNoise: 0.0025,
};

/** The same tank, read through the controller's own telemetry and a second load cell. */
export const TELEMETRY_STAND: Stand = {
  ...TANK_STAND,
  forceGain: 0.996,
  forceTare: -0.21,
  forceDrift: -0.09,
  forceNoise: 0.09,
  rotationNoise: 0.004,
};

/** A stand on flexures that reads force and reaction torque. */
export const FLEXURE_STAND: Stand = {
  ...TANK_STAND,
  forceGain: 1.002,
  forceTare: 0.12,
  forceDrift: 0.03,
  forceNoise: 0.1,
  torqueGain: 0.995,
  torqueTare: 0.0015,
  torqueNoise: 0.002,
  rotationNoise: 0.002,
};

/** The same flexures under the carriage of a small towing tank. */
export const CARRIAGE_STAND: Stand = {
  ...FLEXURE_STAND,
  forceGain: 0.998,
  forceTare: -0.08,
  torqueGain: 1.004,
  wheel: { gain: 1.004, noise: 0.006 },
};

/** Kitchen scale under a beam, tacho and multimeter, read by eye once the needle rests. */
export const SCALE_BEAM = {
  /** Thrust over force on the scale: the arm of the scale over the arm of the propeller. */
  leverRatio: 1.258,
  /** Standard deviation of one reading: part of the force, N, part of the rotation rate. */
  forceNoise: 0.006,
  readingNoise: 0.02,
  rotationNoise: 0.004,
  voltageNoise: 0.01,
  currentNoise: 0.05,
} as const;

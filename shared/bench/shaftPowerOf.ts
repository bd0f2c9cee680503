import type { Controller } from "../model/parts/controller.ts";
import type { Motor } from "../model/parts/motor.ts";
import { shaftFromElectrical, shaftSensitivities } from "../motor/shaftFromElectrical.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { jointScatter } from "./jointScatter.ts";
import type { MeasuredPlateau } from "./measuredPlateau.ts";
import { remembered } from "./remembered.ts";
import { plainMean, type SampleMean, scaledMean } from "./sampleMean.ts";
import type { WrittenPlateau } from "./writtenPlateau.ts";

/** Shaft power of one plateau and what its doubt is made of. */
export interface ShaftPower {
  /** W. */
  readonly mean: number;
  /** Scatter of the mean with the rotation rate allowed for, W. */
  readonly scatter: number;
  readonly degreesOfFreedom: number;
  /** Of what the scatters of all plateaus share; absent where this one stands alone. */
  readonly commonDegreesOfFreedom?: number | undefined;
  /** The readings that this scatter was taken from, rotation rate allowed for. */
  readonly joint: SampleMean;
  /** Rounding of torque or electrical readings, W. */
  readonly rounding: number;
  /** Change of the power by the torque tare, W per N·m; 0 where no torque was measured. */
  readonly perTorque: number;
  /** Relative change of the power by relative change of rotation rate, and of electrical power (0 with a torque cell). */
  readonly byRate: number;
  readonly byElectricalPower: number;
  /** Change of the power by each constant of the motor, in the order of MOTOR_CONSTANTS; empty with a torque cell. */
  readonly byConstants: readonly number[];
}

export type PowerSource = "torque" | "motorConstants";

export interface StandMotor {
  readonly motor: Motor;
  readonly controller: Controller | undefined;
}

/**
 * Shaft power of a plateau, W, as the mean of the products of each moment: P = 2 π n Q. Null without torque.
 *
 * Source   power of a turning shaft, any text; scatter of the product as `jointScatter`.
 */
export function powerFromTorque(plateau: MeasuredPlateau): ShaftPower | null {
  const { torque, rotationRate, turnSign, written, scales } = plateau;
  if (!torque) return null;
  const products = remembered(written, { stage: "powerFromTorque", dependsOn: null }, () => productsOf(written));
  if (products === null) return null;
  // Torque and rotation rate both change sign where the log counts turns backwards; their product does not.
  const turn = 2 * Math.PI * turnSign;
  const scale = turn * scales.rotationRate * scales.torque;
  const joint = scaledMean(products.joint, scale);
  const perTorque = turn * rotationRate.mean;
  return {
    mean: scale * products.mean,
    scatter: joint.scatter,
    degreesOfFreedom: joint.degreesOfFreedom,
    joint,
    rounding: Math.abs(perTorque) * torque.rounding,
    perTorque,
    byRate: 1,
    byElectricalPower: 0,
    byConstants: [],
  };
}

/** Mean of torque times rotation rate, and its scatter with the rotation rate allowed for; units of the columns. */
function productsOf({ readings: { torque, rotationRate } }: WrittenPlateau) {
  if (!torque) return null;
  const products = new Float64Array(torque.length);
  for (let i = 0; i < products.length; i++) products[i] = rotationRate[i]! * torque[i]!;
  const mean = plainMean(products);
  return Number.isFinite(mean) ? { mean, joint: jointScatter(products, rotationRate, 3) } : null;
}

/**
 * Shaft power from electrical power, rotation rate and the motor's constants; the scatter of the readings is carried by
 * the partial derivatives. Only the product of voltage and current enters, so a power column alone serves as well.
 * Null where no electrical power was measured or no motor current fits the reading.
 */
export function powerFromMotor(plateau: MeasuredPlateau, { motor, controller }: StandMotor): ShaftPower | null {
  const { electricalPower, rotationRate } = plateau.scales;
  const dependsOn = [motor, controller, electricalPower, rotationRate];
  return remembered(plateau.written, { stage: "powerFromMotor", dependsOn }, () =>
    fromMotor(plateau, { motor, controller }),
  );
}

function fromMotor(plateau: MeasuredPlateau, { motor, controller }: StandMotor): ShaftPower | null {
  const { electricalPower, rotationRate } = plateau;
  if (!electricalPower) return null;
  const { written, scales } = plateau;
  const { electricalPower: input, rotationRate: rates } = written.readings;
  if (!input) return null;
  const reading = {
    voltage: electricalPower.mean,
    current: 1,
    rotationRate: rotationRate.mean,
    motor,
    controllerResistance: controller?.resistance ?? 0,
  };
  const shaft = solved(reading);
  if (!shaft) return null;
  const { power, byPower, byRate, byConstants } = shaft;
  const powers = new Float64Array(input.length);
  for (let i = 0; i < powers.length; i++) {
    const morePower = scales.electricalPower * input[i]! - electricalPower.mean;
    const faster = scales.rotationRate * rates[i]! - rotationRate.mean;
    powers[i] = power + byPower * morePower + byRate * faster;
  }
  if (!Number.isFinite(plainMean(powers))) return null;
  const joint = jointScatter(powers, rates, 3);
  return {
    mean: power,
    scatter: joint.scatter,
    degreesOfFreedom: joint.degreesOfFreedom,
    joint,
    rounding: Math.abs(byPower) * electricalPower.rounding,
    perTorque: 0,
    byRate: (byRate * rotationRate.mean) / power,
    byElectricalPower: (byPower * electricalPower.mean) / power,
    byConstants,
  };
}

function solved(reading: Parameters<typeof shaftFromElectrical>[0]) {
  try {
    const { shaftPower } = shaftFromElectrical(reading);
    const partials = shaftSensitivities(reading).shaftPower;
    // With the current held at 1 A the voltage is the power.
    const { speedConstant, motorResistance, noLoadCurrent, noLoadCurrentSlope } = partials;
    return {
      power: shaftPower,
      byPower: partials.voltage,
      byRate: partials.rotationRate,
      byConstants: [speedConstant, motorResistance, noLoadCurrent, noLoadCurrentSlope],
    };
  } catch (error) {
    if (error instanceof OutOfDomain) return null;
    throw error;
  }
}

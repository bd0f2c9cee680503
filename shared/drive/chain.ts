import type { DriveRequest } from "../model/drive.ts";
import type { OpenWater } from "../model/drivePropeller.ts";
import { coldResistance, resistancePerHeat, type WindingInSurroundings } from "../motor/windingTemperature.ts";
import { COPPER_REFERENCE_TEMPERATURE } from "../quantity/copper.ts";
import { coefficientAt, endOfCurve } from "./curveEnd.ts";

/** What a chain is made of: numbers by the names of a request, flat, so that a shortlist can fill them again. */
export interface ChainInputs extends Omit<WindingInSurroundings, "resistance"> {
  readonly speedConstant: number;
  readonly motorResistance: number;
  readonly noLoadCurrent: number;
  readonly noLoadCurrentSlope: number;
  /** k of Q = k ω^m; 0: none. */ readonly wetTorque: number;
  readonly wetExponent: number;
  readonly gearRatio: number;
  readonly gearEfficiency: number;
  readonly controllerResistance: number;
  readonly freewheelVoltage: number;
  readonly switchingLoss: number;
  readonly standbyPower: number;
  readonly supplyVoltage: number;
  readonly supplyResistance: number;
  readonly hotelPower: number;
  readonly thrusters: number;
  readonly diameter: number;
  readonly density: number;
  readonly thrustCoefficient: number;
  readonly torqueCoefficient: number;
}

/** Running at a speed through the water. */
export interface Advance {
  /** V_A, m/s. */ readonly advanceSpeed: number;
  readonly openWater: OpenWater;
  /** Advance ratio up to which the curve holds and takes torque: see `endOfCurve`. */ readonly end: number;
}

/**
 * Supply, controller, motor, gear and propeller as one chain, reduced to what the steady state needs. Nothing here
 * allocates once it is made: a shortlist fills it again for each combination.
 */
export interface Chain {
  speedConstant: number;
  noLoadCurrent: number;
  noLoadCurrentSlope: number;
  /** R_w, winding at the temperature of the surroundings, Ω; as stated where its heat is not followed. */
  coldResistance: number;
  /** h = α R_th R_0, Ω/W; 0 where the heat is not followed. */ resistancePerHeat: number;
  /** K; where the heat is not followed the temperature of the stated resistance. */ surroundings: number;
  /** K/W; 0 where the heat is not followed. */ thermalResistance: number;
  wetTorque: number;
  wetExponent: number;
  gearRatio: number;
  gearEfficiency: number;
  controllerResistance: number;
  freewheelVoltage: number;
  switchingLoss: number;
  standbyPower: number;
  supplyVoltage: number;
  supplyResistance: number;
  hotelPower: number;
  thrusters: number;
  /** P_c = P_h + N P_0: what is drawn at any throttle, W. */ constantPower: number;
  /** sqrt(R_s P_c), V: below it the constant power could not be held without the thrusters. */ collapseVoltage: number;
  /** T/(K_T ω²) = ρ D⁴/(2π g)², ω of the motor. */ thrustUnit: number;
  /** Q/(K_Q ω²) = ρ D⁵/(2π g)². */ torqueUnit: number;
  thrustCoefficient: number;
  torqueCoefficient: number;
  /** Change of K_T and K_Q with J, J², ...; not looked at where `advance` is 0. */
  thrustChange: readonly number[];
  torqueChange: readonly number[];
  /** J ω = 2π g V_A/D, rad/s; 0 at rest. */ advance: number;
  /** Where the path of states begins (see shaftState.ts): −I_0 at rest, ω at the end of the curve at speed. */
  lowestPosition: number;
}

/** Not a whole number, so that the engine keeps the fields as floating point from the start. */
const UNSET = 0.5;
const NO_CHANGE: readonly number[] = [];

/**
 * A chain to be filled. Written out in one literal: put together from pieces, an object of this many fields becomes a
 * slow dictionary.
 */
export function emptyChain(): Chain {
  return {
    speedConstant: UNSET,
    noLoadCurrent: UNSET,
    noLoadCurrentSlope: UNSET,
    coldResistance: UNSET,
    resistancePerHeat: UNSET,
    surroundings: UNSET,
    thermalResistance: UNSET,
    wetTorque: UNSET,
    wetExponent: UNSET,
    gearRatio: UNSET,
    gearEfficiency: UNSET,
    controllerResistance: UNSET,
    freewheelVoltage: UNSET,
    switchingLoss: UNSET,
    standbyPower: UNSET,
    supplyVoltage: UNSET,
    supplyResistance: UNSET,
    hotelPower: UNSET,
    thrusters: UNSET,
    constantPower: UNSET,
    collapseVoltage: UNSET,
    thrustUnit: UNSET,
    torqueUnit: UNSET,
    thrustCoefficient: UNSET,
    torqueCoefficient: UNSET,
    thrustChange: NO_CHANGE,
    torqueChange: NO_CHANGE,
    advance: UNSET,
    lowestPosition: UNSET,
  };
}

/** Fills and returns `chain` for the inputs, at rest or, with `advance`, at a speed. No allocation. */
export function fillChain(chain: Chain, inputs: ChainInputs, advance: Advance | null): Chain {
  fillMotor(chain, inputs);
  fillSupply(chain, inputs);
  fillPropeller(chain, inputs, advance);
  return chain;
}

/** The chain that a request describes; the request has been checked by `requireDrive`. */
export function chainOf(request: DriveRequest): Chain {
  const { heat, wetTorque, advanceSpeed, openWater, torqueCoefficient } = request;
  const resistanceTemperature = heat?.resistanceTemperature ?? COPPER_REFERENCE_TEMPERATURE;
  // Field by field, as below: draws and sensitivities make a chain each time.
  const inputs: ChainInputs = {
    speedConstant: request.speedConstant,
    motorResistance: request.motorResistance,
    noLoadCurrent: request.noLoadCurrent,
    noLoadCurrentSlope: request.noLoadCurrentSlope,
    resistanceTemperature,
    surroundings: heat?.surroundings ?? resistanceTemperature,
    thermalResistance: heat?.thermalResistance ?? 0,
    wetTorque: wetTorque?.coefficient ?? 0,
    wetExponent: wetTorque?.exponent ?? 1,
    gearRatio: request.gearRatio,
    gearEfficiency: request.gearEfficiency,
    controllerResistance: request.controllerResistance,
    freewheelVoltage: request.freewheelVoltage,
    switchingLoss: request.switchingLoss,
    standbyPower: request.standbyPower,
    supplyVoltage: request.supplyVoltage,
    supplyResistance: request.supplyResistance,
    hotelPower: request.hotelPower,
    thrusters: request.thrusters,
    diameter: request.diameter,
    density: request.density,
    thrustCoefficient: request.thrustCoefficient,
    torqueCoefficient,
  };
  const advance =
    advanceSpeed > 0 && openWater ? { advanceSpeed, openWater, end: endOfCurve(torqueCoefficient, openWater) } : null;
  return fillChain(emptyChain(), inputs, advance);
}

// Written out field by field: copying by name costs ten times as much, and this runs for every combination of parts.

function fillMotor(chain: Chain, inputs: ChainInputs): void {
  // A winding whose heat is not followed stays at the temperature that its resistance was stated for.
  const followed = inputs.thermalResistance > 0;
  const winding = inputs.motorResistance;
  chain.speedConstant = inputs.speedConstant;
  chain.noLoadCurrent = inputs.noLoadCurrent;
  chain.noLoadCurrentSlope = inputs.noLoadCurrentSlope;
  chain.coldResistance = followed ? coldResistance(inputs, winding) : winding;
  chain.resistancePerHeat = followed ? resistancePerHeat(inputs, winding) : 0;
  chain.surroundings = followed ? inputs.surroundings : inputs.resistanceTemperature;
  chain.thermalResistance = inputs.thermalResistance;
  chain.wetTorque = inputs.wetTorque;
  chain.wetExponent = inputs.wetExponent;
  chain.gearRatio = inputs.gearRatio;
  chain.gearEfficiency = inputs.gearEfficiency;
}

function fillSupply(chain: Chain, inputs: ChainInputs): void {
  chain.controllerResistance = inputs.controllerResistance;
  chain.freewheelVoltage = inputs.freewheelVoltage;
  chain.switchingLoss = inputs.switchingLoss;
  chain.standbyPower = inputs.standbyPower;
  chain.supplyVoltage = inputs.supplyVoltage;
  chain.supplyResistance = inputs.supplyResistance;
  chain.hotelPower = inputs.hotelPower;
  chain.thrusters = inputs.thrusters;
  chain.constantPower = inputs.hotelPower + inputs.thrusters * inputs.standbyPower;
  chain.collapseVoltage = Math.sqrt(inputs.supplyResistance * chain.constantPower);
}

function fillPropeller(chain: Chain, inputs: ChainInputs, advance: Advance | null): void {
  const { diameter: D, density } = inputs;
  const turn = 2 * Math.PI * inputs.gearRatio;
  chain.thrustUnit = (density * D * D * D * D) / (turn * turn);
  chain.torqueUnit = chain.thrustUnit * D;
  chain.thrustCoefficient = inputs.thrustCoefficient;
  chain.torqueCoefficient = inputs.torqueCoefficient;
  chain.thrustChange = advance === null ? NO_CHANGE : advance.openWater.thrust;
  chain.torqueChange = advance === null ? NO_CHANGE : advance.openWater.torque;
  chain.advance = advance === null ? 0 : (turn * advance.advanceSpeed) / D;
  chain.lowestPosition = advance === null ? -inputs.noLoadCurrent : chain.advance / advance.end;
}

/** Thrust of one propeller, N, at angular velocity `omega` of the motor (rad/s): K_T(J) ρ n² D⁴ with n = ω/(2π g). */
export function thrustAt(chain: Chain, omega: number): number {
  if (chain.advance === 0) return chain.thrustUnit * chain.thrustCoefficient * omega * omega;
  return (
    chain.thrustUnit * omega * omega * coefficientAt(chain.thrustCoefficient, chain.thrustChange, chain.advance / omega)
  );
}

/** Rotation rate of the propeller, rev/s, at angular velocity `omega` of the motor (rad/s). */
export function rotationRateAt(chain: Chain, omega: number): number {
  return omega / (2 * Math.PI * chain.gearRatio);
}

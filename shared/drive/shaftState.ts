import { heatedResistance } from "../motor/windingTemperature.ts";
import { type Chain, thrustAt } from "./chain.ts";
import { coefficientAt, slopeOverRate } from "./curveEnd.ts";

/**
 * Unknowns of the chain. Made once and filled again for each point.
 *
 * All states of the shaft lie on one path, told by `position`: from 0 on the rotor turns and it is ω (rad/s); below 0
 * friction holds the rotor and it is I_m − I_0 (A), from −I_0, where nothing is drawn, up to break-away. Current and
 * voltage rise all along it, so each question has at most one answer.
 */
export interface SteadyState {
  /**
   * "windmilling": the propeller would turn slower than its curve reaches, rate and thrust stand for the end of the curve,
   * thrust and torque are not known, and the motor is taken to draw nothing. "runaway": the winding has no steady
   * temperature. In "collapsed" and "runaway" the other numbers have no meaning.
   */
  status: "turning" | "atRest" | "windmilling" | "collapsed" | "runaway";
  position: number;
  /** ω of the motor, rad/s. */ angularVelocity: number;
  /** I_m, A. */ motorCurrent: number;
  /** R_m(T), Ω. */ motorResistance: number;
  /** V, that the controller puts on the motor and its own resistance, V. */ inputVoltage: number;
  /** δ; above 1 where a point was asked for that full throttle does not reach. */ throttle: number;
  /** U, V. */ busVoltage: number;
  /** The root was found to the tolerance asked for; true where the state is closed form. */ converged: boolean;
  /** Index in LIMIT_NAMES of the limit that bounds the point; −1 for none. */ limit: number;
  /** Slopes of current and voltage over the position, and the excess that a search works on. */
  currentSlope: number;
  voltageSlope: number;
  excess: number;
  excessSlope: number;
}

/** A state to be filled. */
export function emptyState(): SteadyState {
  // Not a whole number, so that the engine keeps these fields as floating point from the start; one literal, see chain.ts.
  const unset = 0.5;
  return {
    status: "atRest",
    position: unset,
    angularVelocity: unset,
    motorCurrent: unset,
    motorResistance: unset,
    inputVoltage: unset,
    throttle: unset,
    busVoltage: unset,
    converged: true,
    limit: -1,
    currentSlope: unset,
    voltageSlope: unset,
    excess: unset,
    excessSlope: unset,
  };
}

/** Torque of the propeller, N·m, at its own shaft, at angular velocity `omega` of the motor (rad/s): K_Q(J) ρ n² D⁵. */
export function propellerTorque(chain: Chain, omega: number): number {
  const K =
    chain.advance === 0
      ? chain.torqueCoefficient
      : coefficientAt(chain.torqueCoefficient, chain.torqueChange, chain.advance / omega);
  return chain.torqueUnit * K * omega * omega;
}

/** Torque lost to the water in a flooded motor, N·m: k ω^m. */
export function wetTorque({ wetTorque: k, wetExponent }: Chain, omega: number): number {
  return k === 0 ? 0 : k * omega ** wetExponent;
}

/**
 * Fills current, resistance and voltage of the motor, and their slopes, for the position of `state`.
 *
 *   Q_m = Q/(g η_g) + k ω^m,   I = K_v Q_m + I_0 + b ω
 *   R_m = (R_w + h P_f)/(1 − h I²),   P_f = (I_0 + b ω) ω/K_v,   V = ω/K_v + I (R_m + R_c)
 *
 * Beyond the current of thermal runaway the voltage is infinite.
 *
 * Source   relations as `motorConstants.ts`, heat as `windingTemperature.ts`; slopes by differentiating them.
 */
export function evaluateShaft(chain: Chain, state: SteadyState): void {
  if (state.position < 0) {
    state.angularVelocity = 0;
    state.motorCurrent = chain.noLoadCurrent + state.position;
    state.currentSlope = 1;
    fillVoltage(chain, state, 0, 0);
    return;
  }
  const { speedConstant: Kv, noLoadCurrent: I_0, noLoadCurrentSlope: b } = chain;
  const omega = state.position;
  const geared = 1 / (chain.gearRatio * chain.gearEfficiency);
  const wetSlope = chain.wetTorque === 0 ? 0 : chain.wetTorque * wetPower(omega, chain.wetExponent - 1);
  const torque = propellerTorque(chain, omega) * geared + wetSlope * omega;
  const torqueSlope = propellerTorqueSlope(chain, omega) * geared + wetSlope * chain.wetExponent;
  state.angularVelocity = omega;
  state.motorCurrent = Kv * torque + I_0 + b * omega;
  state.currentSlope = Kv * torqueSlope + b;
  fillVoltage(chain, state, ((I_0 + b * omega) * omega) / Kv, (I_0 + 2 * b * omega) / Kv);
}

/** ω^(m−1): the usual square law without the cost of a power. */
function wetPower(omega: number, exponent: number): number {
  return exponent === 1 ? omega : omega ** exponent;
}

function propellerTorqueSlope(chain: Chain, omega: number): number {
  if (chain.advance === 0) return 2 * chain.torqueUnit * chain.torqueCoefficient * omega;
  const J = chain.advance / omega;
  return chain.torqueUnit * omega * slopeOverRate(chain.torqueCoefficient, chain.torqueChange, J);
}

function fillVoltage(chain: Chain, state: SteadyState, frictionLoss: number, frictionSlope: number): void {
  const { resistancePerHeat: h, controllerResistance: R_c, speedConstant } = chain;
  const { motorCurrent: I, angularVelocity: omega, currentSlope } = state;
  const R = heatedResistance(chain.coldResistance, h, frictionLoss, I);
  const resistanceSlope = h === 0 ? 0 : (h * (frictionSlope + 2 * R * I * currentSlope)) / (1 - h * I * I);
  state.motorResistance = R;
  state.inputVoltage = omega / speedConstant + I * (R + R_c);
  state.voltageSlope =
    (omega > 0 || state.position >= 0 ? 1 / speedConstant : 0) + currentSlope * (R + R_c) + I * resistanceSlope;
}

/** Thrust of one propeller, N. */
export function thrustOf(chain: Chain, state: SteadyState): number {
  return state.angularVelocity === 0 ? 0 : thrustAt(chain, state.angularVelocity);
}

/** Core and friction loss, W: (I_0 + b ω) ω/K_v, what the no-load current brings the rotor. */
export function frictionLossOf(chain: Chain, { angularVelocity: omega }: SteadyState): number {
  return ((chain.noLoadCurrent + chain.noLoadCurrentSlope * omega) * omega) / chain.speedConstant;
}

/** Temperature of the winding, K: T_w + R_th (I² R_m + P_f); where its heat is not followed, that of its stated resistance. */
export function windingTemperatureOf(chain: Chain, state: SteadyState): number {
  if (chain.thermalResistance === 0) return chain.surroundings;
  const { motorCurrent: I, motorResistance: R } = state;
  const friction = state.status === "windmilling" ? 0 : frictionLossOf(chain, state);
  return chain.surroundings + chain.thermalResistance * (I * I * R + friction);
}

/** Electrical power of the motor, W. */
export function motorPowerOf(chain: Chain, { inputVoltage, motorCurrent: I }: SteadyState): number {
  return (inputVoltage - I * chain.controllerResistance) * I;
}

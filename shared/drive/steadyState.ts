import { voltageUnderPower } from "../supply/busVoltage.ts";
import { controllerVoltage } from "./bus.ts";
import type { Chain } from "./chain.ts";
import { fillExcess, findPosition } from "./positionSearch.ts";
import { evaluateShaft, type SteadyState } from "./shaftState.ts";

export { emptyState, type SteadyState } from "./shaftState.ts";

/** Throttle that no controller can tell from 0, where voltages would vanish below the smallest number. */
const CLOSED = 1e-9;
/** Share of the open-circuit voltage, or of the position, by which a search may miss and still have found a root. */
const ROOT = 1e-9;
/** At the end itself rounding may give the excess either sign when nothing has resistance. */
const A_HAIR = 1 + 1e-9;

/**
 * Fills and returns `state`: the steady state of N equal thrusters and a constant-power hotel load at throttle δ, at rest
 * or at the speed of the chain. See shaftState.ts for the motor and positionSearch.ts for the equation of the bus.
 *
 * The controller's current can not run backwards: where even the voltage left at closed current is more than the
 * controller makes, nothing is drawn.
 *
 * Source   average-value model: Erickson & Maksimovic, Fundamentals of Power Electronics, 2nd ed. (2001), ch. 3;
 *          supply by Kirchhoff's voltage law.
 */
export function solveSteadyState(chain: Chain, throttle: number, state: SteadyState): SteadyState {
  state.limit = -1;
  if (throttle < CLOSED) return drawNothing(chain, 0, state);
  const low = chain.lowestPosition;
  if (excessAt(chain, throttle, low, state) >= 0) return drawNothing(chain, throttle, state);
  const top = chain.speedConstant * controllerVoltage(chain, throttle, chain.supplyVoltage);
  const high = Math.max(top, low, 0) * A_HAIR + Number.MIN_VALUE;
  state.converged = findPosition(chain, "throttle", throttle, low, high, startOf(chain, throttle), state);
  if (!isRoot(chain, state)) return collapse(state);
  state.throttle = throttle;
  state.status = state.position > 0 ? "turning" : "atRest";
  return state;
}

function excessAt(chain: Chain, throttle: number, position: number, state: SteadyState): number {
  state.position = position;
  evaluateShaft(chain, state);
  fillExcess(chain, "throttle", throttle, state);
  return state.excess;
}

/** At the border of collapse the sign changes too, but the excess stays large and has no slope to go down by. */
function isRoot(chain: Chain, { excess, excessSlope, position, busVoltage }: SteadyState): boolean {
  const left = Math.abs(excess);
  const scale = Math.abs(position) + chain.noLoadCurrent;
  return busVoltage > 0 && (left <= ROOT * chain.supplyVoltage || left <= 1e-3 * ROOT * scale * excessSlope);
}

/** Where the rotor would turn with the winding as cold as the water, no loss in the water and J = 0: closed form. */
function startOf(chain: Chain, throttle: number): number {
  const { speedConstant, noLoadCurrent, noLoadCurrentSlope: b, supplyResistance } = chain;
  const R =
    chain.coldResistance + chain.controllerResistance + chain.thrusters * throttle * throttle * supplyResistance;
  const q = (chain.torqueUnit * chain.torqueCoefficient) / (chain.gearRatio * chain.gearEfficiency);
  const constantDrop = (throttle * supplyResistance * chain.constantPower) / chain.supplyVoltage;
  const voltage = controllerVoltage(chain, throttle, chain.supplyVoltage) - constantDrop - R * noLoadCurrent;
  return positiveRoot(R * speedConstant * q, 1 / speedConstant + R * b, voltage);
}

/** Positive root of a x² + b x = d for a, b not negative; free of cancellation, and right for a = 0. */
function positiveRoot(a: number, b: number, d: number): number {
  return d > 0 ? (2 * d) / (b + Math.sqrt(b * b + 4 * a * d)) : 0;
}

/** The thrusters draw nothing but their standby power: closed throttle, or less than makes any current flow. */
export function drawNothing(chain: Chain, throttle: number, state: SteadyState): SteadyState {
  const voltage = voltageUnderPower(chain.supplyVoltage, chain.supplyResistance, chain.constantPower);
  if (voltage === null) return collapse(state);
  const windmilling = chain.advance > 0;
  state.status = windmilling ? "windmilling" : "atRest";
  state.position = windmilling ? chain.lowestPosition : -chain.noLoadCurrent;
  state.angularVelocity = windmilling ? chain.lowestPosition : 0;
  state.motorCurrent = 0;
  state.motorResistance = chain.coldResistance;
  state.inputVoltage = 0;
  state.throttle = throttle;
  state.busVoltage = voltage;
  state.converged = true;
  return state;
}

function collapse(state: SteadyState): SteadyState {
  state.status = "collapsed";
  state.angularVelocity = 0;
  state.motorCurrent = 0;
  state.busVoltage = 0;
  state.converged = true;
  return state;
}

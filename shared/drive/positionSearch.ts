import { busVoltageFor, constantCurrent } from "./bus.ts";
import type { Chain } from "./chain.ts";
import { evaluateShaft, frictionLossOf, motorPowerOf, type SteadyState } from "./shaftState.ts";

/** What a search along the path of states can aim at; each quantity rises with the position. */
export type Goal = "throttle" | "supplyCurrent" | "motorCurrent" | "motorPower" | "windingTemperature";

const STEPS = 200;
/** Rounding makes the last bits wander: below the first a step is as good as none, below the second it need not shrink. */
const TOLERANCE = 1e-15;
const WANDERING = 1e-12;
/** Steps of Newton's that may go by before every other one is a bisection. */
const PATIENCE = 12;

/**
 * Moves `state` to the position between `low` and `high` where the quantity is at its goal, from `start` on; the caller
 * has made sure that it is below the goal at `low` and above it at `high`. Newton's method that can not leave the
 * bracket: a step that would, or one of every two when they are many, is a bisection.
 *
 * Returns  false where the steps ran out. The state is that of the position reached, whatever its excess: where no
 *          root is (see "throttle" below), it is where the sign changes.
 */
export function findPosition(
  chain: Chain,
  goal: Goal,
  value: number,
  low: number,
  high: number,
  start: number,
  state: SteadyState,
): boolean {
  const unit = chain.noLoadCurrent;
  let before = Number.POSITIVE_INFINITY;
  state.position = start > low && start < high ? start : 0.5 * (low + high);
  for (let step = 0; step < STEPS; step++) {
    evaluateShaft(chain, state);
    fillExcess(chain, goal, value, state);
    const { position, excess } = state;
    if (excess > 0) high = position;
    else low = position;
    const scale = Math.abs(position) + unit;
    const newton = -excess / state.excessSlope;
    const size = Math.abs(newton);
    if (size <= TOLERANCE * scale || high - low <= TOLERANCE * scale) return true;
    if (size <= WANDERING * scale && size >= 0.5 * before) return true;
    before = size;
    const next = position + newton;
    const bisect = !(next > low && next < high) || (step > PATIENCE && step % 2 === 1);
    state.position = bisect ? 0.5 * (low + high) : next;
  }
  return false;
}

/** Fills excess and its slope at the position of `state`, whose shaft has been evaluated. */
export function fillExcess(chain: Chain, goal: Goal, value: number, state: SteadyState): void {
  switch (goal) {
    case "throttle":
      throttleExcess(chain, value, state);
      return;
    case "supplyCurrent":
      supplyExcess(chain, value, state);
      return;
    case "motorCurrent":
      state.excess = state.motorCurrent - value;
      state.excessSlope = state.currentSlope;
      return;
    case "motorPower":
      state.excess = motorPowerOf(chain, state) - value;
      state.excessSlope = motorPowerSlope(chain, state);
      return;
    case "windingTemperature":
      temperatureExcess(chain, value, state);
  }
}

/**
 * Bus voltage U = (V + U_f)/δ − U_f over what the supply holds at it: U + R_s [N I (δ + κ (1 − δ)) + P_c/U] − U_oc.
 *
 * It rises from U = sqrt(R_s P_c) on: one root, whether or not the supply is past its greatest power, and no case is lost
 * as it would be by taking one root of the bus beforehand. Below, the constant power, which draws more current the
 * lower the bus, could only be held up by the thrusters: counted as too low, so that a search ends at the border with
 * an excess left, and that is a collapse.
 */
function throttleExcess(chain: Chain, throttle: number, state: SteadyState): void {
  const { supplyResistance: R_s, thrusters, switchingLoss } = chain;
  const U = busVoltageFor(chain, throttle, state.inputVoltage);
  state.busVoltage = U;
  if (U < chain.collapseVoltage) {
    state.excess = -chain.supplyVoltage;
    state.excessSlope = 0;
    return;
  }
  const drop = R_s * thrusters * (throttle + switchingLoss * (1 - throttle));
  const constant = R_s * constantCurrent(chain, U);
  state.excess = U - chain.supplyVoltage + drop * state.motorCurrent + constant;
  const held = constant === 0 ? 1 : 1 - constant / U;
  state.excessSlope = (held * state.voltageSlope) / throttle + drop * state.currentSlope;
}

/** Supply current over `value`, at the bus voltage that it leaves. */
function supplyExcess(chain: Chain, value: number, state: SteadyState): void {
  const { freewheelVoltage: U_f, switchingLoss: kappa, thrusters } = chain;
  const U = chain.supplyVoltage - chain.supplyResistance * value;
  const share = kappa + ((1 - kappa) * (state.inputVoltage + U_f)) / (U + U_f);
  state.excess = thrusters * state.motorCurrent * share + constantCurrent(chain, U) - value;
  state.excessSlope =
    thrusters * (state.currentSlope * share + (state.motorCurrent * (1 - kappa) * state.voltageSlope) / (U + U_f));
}

function motorPowerSlope(chain: Chain, state: SteadyState): number {
  const { motorCurrent: I, currentSlope, inputVoltage, voltageSlope } = state;
  const R_c = chain.controllerResistance;
  return (inputVoltage - I * R_c) * currentSlope + (voltageSlope - currentSlope * R_c) * I;
}

/** Heat that the winding makes at the temperature `value` (K) over what leaves it there, W: I² R(T) + P_f − (T − T_w)/R_th. */
function temperatureExcess(chain: Chain, value: number, state: SteadyState): void {
  const carriedOff = (value - chain.surroundings) / chain.thermalResistance;
  const R = chain.coldResistance + chain.resistancePerHeat * carriedOff;
  const { motorCurrent: I, currentSlope, angularVelocity: omega } = state;
  state.excess = I * I * R + frictionLossOf(chain, state) - carriedOff;
  const friction =
    state.position < 0 ? 0 : (chain.noLoadCurrent + 2 * chain.noLoadCurrentSlope * omega) / chain.speedConstant;
  state.excessSlope = 2 * I * currentSlope * R + friction;
}

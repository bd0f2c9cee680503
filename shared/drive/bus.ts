import { voltageUnderPower } from "../supply/busVoltage.ts";
import type { Chain } from "./chain.ts";
import type { SteadyState } from "./shaftState.ts";

/** Voltage V that the controller makes of a bus voltage (V) at a throttle: δ U − (1 − δ) U_f. */
export function controllerVoltage(chain: Chain, throttle: number, busVoltage: number): number {
  return throttle * busVoltage - (1 - throttle) * chain.freewheelVoltage;
}

/** Bus voltage, V, from which a controller at `throttle` makes `inputVoltage` (V). */
export function busVoltageFor(chain: Chain, throttle: number, inputVoltage: number): number {
  return (inputVoltage + chain.freewheelVoltage) / throttle - chain.freewheelVoltage;
}

/** Current from the supply, A, of all thrusters and the hotel load: N I (δ + κ (1 − δ)) + P_c/U. */
export function supplyCurrentOf(chain: Chain, { throttle, motorCurrent, busVoltage }: SteadyState): number {
  const share = throttle + chain.switchingLoss * (1 - throttle);
  return chain.thrusters * motorCurrent * share + constantCurrent(chain, busVoltage);
}

/** P_c/U, A; 0 without constant power, also where the bus has no voltage. */
export function constantCurrent({ constantPower }: Chain, busVoltage: number): number {
  return constantPower === 0 ? 0 : constantPower / busVoltage;
}

/** Lost in one controller by freewheeling and switching, W: (1 − δ) I (U_f + κ U). */
export function partThrottleLossOf(chain: Chain, { throttle, motorCurrent, busVoltage }: SteadyState): number {
  return (1 - throttle) * motorCurrent * (chain.freewheelVoltage + chain.switchingLoss * busVoltage);
}

/** Power into one controller, W: motor, its own resistance, part-throttle losses and what it draws by itself. */
export function electricalPowerOf(chain: Chain, state: SteadyState): number {
  return state.inputVoltage * state.motorCurrent + partThrottleLossOf(chain, state) + chain.standbyPower;
}

const STEPS = 100;

/**
 * Fills bus voltage and throttle for the current and voltage of `state`; false where the supply can not give them.
 *
 *   U = U_oc − R_s [N I (κ + (1 − κ) (V + U_f)/(U + U_f)) + P_c/U],   δ = (V + U_f)/(U + U_f)
 *
 * Of the two roots the upper one: it is where a load that is switched on arrives. Without U_f a quadratic; with it, from
 * above the root, Newton's steps on a concave function fall onto it without passing it. Where they run out,
 * `state.converged` turns false.
 *
 * Source   Kirchhoff's voltage law with the average-value converter of Erickson & Maksimovic, Fundamentals of Power
 *          Electronics, 2nd ed. (2001), ch. 3; κ, the switching loss, as its controller states it.
 */
export function fillBus(chain: Chain, state: SteadyState): boolean {
  const { supplyResistance: R_s, freewheelVoltage: U_f, switchingLoss: kappa, thrusters } = chain;
  const { motorCurrent: I, inputVoltage: V } = state;
  const drop = R_s * thrusters * I;
  const level = chain.supplyVoltage - drop * kappa;
  const shared = drop * (1 - kappa) * (V + U_f);
  const constant = R_s * chain.constantPower;
  // Without resistance times power there is nothing to solve; the same formula serves.
  if (!(Number.isFinite(V) && level > 0)) return false;
  const U = U_f === 0 ? quadratic(level, shared + constant) : newton(chain, level, shared, constant, state);
  if (!(U > 0)) return false;
  state.busVoltage = U;
  state.throttle = (V + U_f) / (U + U_f);
  return true;
}

function quadratic(level: number, product: number): number {
  const voltage = voltageUnderPower(level, 1, product);
  return voltage === null ? Number.NaN : voltage;
}

function newton(
  { freewheelVoltage: U_f }: Chain,
  level: number,
  shared: number,
  constant: number,
  state: SteadyState,
): number {
  let U = level;
  for (let step = 0; step < STEPS; step++) {
    const W = U + U_f;
    const g = level - U - shared / W - constant / U;
    const slope = -1 + shared / (W * W) + constant / (U * U);
    if (!(slope < 0)) return g >= 0 ? U : Number.NaN;
    const next = U - g / slope;
    if (!(next > 0)) return Number.NaN;
    if (Math.abs(next - U) <= 4 * Number.EPSILON * U) return next;
    U = next;
  }
  state.converged = false;
  return U;
}

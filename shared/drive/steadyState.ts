import { bracketedRoot } from "../numeric/rootFinding.ts";
import { voltageUnderPower } from "../supply/busVoltage.ts";
import { type Chain, currentAt, inputVoltage, pathResistance, velocityAtInputVoltage } from "./chain.ts";

/** Unknowns of the chain at one throttle. Made once and filled again for each throttle. */
export interface SteadyState {
  status: "turning" | "atRest" | "collapsed";
  /** ω, rad/s. */ angularVelocity: number;
  /** I_m, A. */ motorCurrent: number;
  /** U, V. */ busVoltage: number;
  /** The root was found to the tolerance asked for; true where the state is closed form. */ converged: boolean;
}

export function emptyState(): SteadyState {
  return { status: "atRest", angularVelocity: 0, motorCurrent: 0, busVoltage: 0, converged: true };
}

// Rounding makes the last bits of ω wander; asking for less than this would only spend steps.
const RELATIVE_TOLERANCE = 4 * Number.EPSILON;
const MAXIMUM_STEPS = 100;

/** Throttle that no controller can tell from 0, where voltages would vanish below the smallest number. */
const CLOSED = 1e-12;

/**
 * Fills and returns `state`: the steady state of N equal thrusters and a constant-power hotel load at throttle δ.
 *
 * With V(ω) = ω/K_v + I_m (R_m + R_c) the voltage the controller must make, the bus must stand at U = V/δ, and
 *
 *   f(ω) = U_oc − V/δ − R_s (N δ I_m + P_h δ/V) = 0
 *
 * f falls from U = sqrt(R_s P_h) on, up to V = δ U_oc where it is not positive: one root, whether or not the supply is
 * past its greatest power, and no case is lost as it would be by taking one root of the bus quadratic beforehand.
 * Below sqrt(R_s P_h) the hotel load, which draws more current the lower the bus, could only be held up by the
 * thrusters; that is called a collapse. Where even I_0 can not be driven the rotor stands, a plain resistance.
 *
 * Source   average-value model: Erickson & Maksimovic, Fundamentals of Power Electronics, 2nd ed. (2001), ch. 3;
 *          supply by Kirchhoff's voltage law.
 */
export function solveSteadyState(chain: Chain, throttle: number, state: SteadyState): SteadyState {
  const { supply, hotelPower, thrusters, motor } = chain;
  const { openCircuitVoltage, resistance } = supply;
  const holdVoltage = pathResistance(chain) * motor.noLoadCurrent;
  const hotelVoltage = throttle * Math.sqrt(resistance * hotelPower);
  const excess = (omega: number): number => {
    const current = currentAt(chain, omega);
    const V = inputVoltage(chain, omega, current);
    const hotelDrop = hotelPower === 0 ? 0 : (resistance * hotelPower * throttle) / V;
    return openCircuitVoltage - V / throttle - resistance * thrusters * throttle * current - hotelDrop;
  };
  const high = velocityAtInputVoltage(chain, throttle * openCircuitVoltage);
  if (throttle < CLOSED) return standStill(chain, 0, state);
  if (high === 0) return standStill(chain, throttle, state);
  if (resistance === 0) return turn(chain, throttle, high, true, state);
  const low = velocityAtInputVoltage(chain, Math.max(hotelVoltage, holdVoltage));
  if (excess(low) < 0) {
    if (holdVoltage >= hotelVoltage) return standStill(chain, throttle, state);
    return collapse(state);
  }
  // A hair above: at the end itself rounding may give f either sign when the supply is very stiff.
  const { root, converged } = bracketedRoot(excess, low, high * (1 + 1e-9), {
    relativeTolerance: RELATIVE_TOLERANCE,
    maximumSteps: MAXIMUM_STEPS,
  });
  return turn(chain, throttle, root, converged, state);
}

function turn(chain: Chain, throttle: number, omega: number, converged: boolean, state: SteadyState): SteadyState {
  const current = currentAt(chain, omega);
  state.status = "turning";
  state.angularVelocity = omega;
  state.motorCurrent = current;
  state.busVoltage = inputVoltage(chain, omega, current) / throttle;
  state.converged = converged;
  return state;
}

/**
 * Rotor held by its friction, a resistance R that the controller makes R/δ² at the bus. With N of them across it the
 * supply is, by Thévenin's theorem, one of U_oc/a behind R_s/a, a = 1 + R_s N δ²/R, and the hotel load hangs on that.
 */
function standStill(chain: Chain, throttle: number, state: SteadyState): SteadyState {
  const { openCircuitVoltage, resistance } = chain.supply;
  const R = pathResistance(chain);
  if (throttle > 0 && R === 0) return collapse(state);
  const a = throttle === 0 ? 1 : 1 + (resistance * chain.thrusters * throttle * throttle) / R;
  const voltage = voltageUnderPower(openCircuitVoltage / a, resistance / a, chain.hotelPower);
  if (voltage === null) return collapse(state);
  state.status = "atRest";
  state.angularVelocity = 0;
  state.busVoltage = voltage;
  state.motorCurrent = throttle === 0 ? 0 : (throttle * voltage) / R;
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

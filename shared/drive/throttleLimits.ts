import type { DriveRequest, LimitState } from "../model/drive.ts";
import { inducedVoltage } from "../motor/motorConstants.ts";
import { bracketedRoot } from "../numeric/rootFinding.ts";
import { voltageUnderPower } from "../supply/busVoltage.ts";
import {
  type Chain,
  currentAt,
  inputVoltage,
  pathResistance,
  velocityAtCurrent,
  velocityAtInputVoltage,
} from "./chain.ts";
import type { DriveNumbers } from "./driveNumbers.ts";

/** A stated limit and the throttle that reaches it, the same for every throttle of a request. */
export type ThrottleLimit = Omit<LimitState, "actual">;

/**
 * Throttle at which each stated limit is reached as the throttle opens from 0; null where full throttle, or the
 * greatest power of the supply, comes first. "supply voltage" is the supply's own limit: half the open-circuit
 * voltage, below which more throttle gives less power to the vehicle as a whole.
 *
 * Speed and current of the motor rise with the throttle up to that point: each limit is first turned into a state of
 * the motor (closed form or one bracketed root) and the throttle follows without further solving.
 * The controller is held against the motor current, which is what its switches carry.
 */
export function throttleLimits(chain: Chain, limits: DriveRequest["limits"]): ThrottleLimit[] {
  const found: ThrottleLimit[] = [];
  const add = (name: ThrottleLimit["name"], limit: number, unit: string, reachedAtThrottle: number | null): void => {
    found.push({ name, limit, unit, reachedAtThrottle });
  };
  const { motorCurrent, motorPower, controllerCurrent, supplyCurrent } = limits;
  if (motorCurrent !== undefined) {
    add("motor current", motorCurrent, "A", throttleAtMotorCurrent(chain, motorCurrent));
  }
  if (motorPower !== undefined) {
    add("motor power", motorPower, "W", throttleAtMotorPower(chain, motorPower));
  }
  if (controllerCurrent !== undefined) {
    add("controller current", controllerCurrent, "A", throttleAtMotorCurrent(chain, controllerCurrent));
  }
  if (supplyCurrent !== undefined) {
    add("supply current", supplyCurrent, "A", throttleAtSupplyCurrent(chain, supplyCurrent));
  }
  const { openCircuitVoltage, resistance } = chain.supply;
  if (resistance > 0) {
    const reached = throttleAtSupplyCurrent(chain, openCircuitVoltage / (2 * resistance));
    add("supply voltage", openCircuitVoltage / 2, "V", reached);
  }
  return found;
}

/** Name of the limit reached first; the supply voltage where the throttle is fully open before any. */
export function governingLimit(limits: readonly ThrottleLimit[]): LimitState["name"] {
  let first: ThrottleLimit | undefined;
  for (const limit of limits) {
    if (limit.reachedAtThrottle === null) continue;
    if (first === undefined || limit.reachedAtThrottle < first.reachedAtThrottle!) first = limit;
  }
  return first?.name ?? "supply voltage";
}

/** The quantity of the operating point that a limit is held against. */
export function limitedQuantity(name: LimitState["name"], numbers: DriveNumbers): number {
  switch (name) {
    case "motor current":
    case "controller current":
      return numbers.motorCurrent;
    case "motor power":
      return numbers.motorVoltage * numbers.motorCurrent;
    case "supply current":
      return numbers.supplyCurrent;
    case "supply voltage":
      return numbers.supplyVoltage;
  }
}

/** Throttle above which the supply can not hold the hotel load next to the thrusters; null where it always can. */
export function collapseThrottle(chain: Chain): number | null {
  const { openCircuitVoltage, resistance } = chain.supply;
  if (resistance === 0 || chain.hotelPower === 0) return null;
  return throttleAtSupplyCurrent(chain, (openCircuitVoltage - Math.sqrt(resistance * chain.hotelPower)) / resistance);
}

function throttleAtMotorCurrent(chain: Chain, current: number): number | null {
  return throttleAt(chain, velocityAtCurrent(chain, current), current);
}

/** Motor power (ω/K_v + R_m I) I. */
function throttleAtMotorPower(chain: Chain, power: number): number | null {
  const omega = velocityAtPower(chain, power, chain.motor.resistance);
  return omega === null ? null : throttleAt(chain, omega, currentAtPower(chain, omega, power, chain.motor.resistance));
}

/** Throttle at a state of the motor: δ = V/U with the bus at the power that all thrusters and the hotel load draw. */
function throttleAt(chain: Chain, omega: number, current: number): number | null {
  const V = inputVoltage(chain, omega, current);
  const { openCircuitVoltage, resistance } = chain.supply;
  const U = voltageUnderPower(openCircuitVoltage, resistance, chain.thrusters * V * current + chain.hotelPower);
  return U === null ? null : upToFull(V / U);
}

function throttleAtSupplyCurrent(chain: Chain, supplyCurrent: number): number | null {
  const U = chain.supply.openCircuitVoltage - chain.supply.resistance * supplyCurrent;
  // Below this the supply has collapsed before the current is reached (see solveSteadyState).
  if (!(U > 0) || U < Math.sqrt(chain.supply.resistance * chain.hotelPower) * (1 - 1e-12)) return null;
  const power = (U * supplyCurrent - chain.hotelPower) / chain.thrusters;
  if (power <= 0) return 0;
  const omega = velocityAtPower(chain, power, pathResistance(chain));
  if (omega === null) return null;
  return upToFull(inputVoltage(chain, omega, currentAtPower(chain, omega, power, pathResistance(chain))) / U);
}

/**
 * Angular velocity, rad/s, at which (ω/K_v + R I) I is `power` (W); 0 where friction still holds the rotor, null where
 * full open-circuit voltage does not reach it. Solved for ω, not for the current: a light propeller turns at any speed
 * on almost the same current.
 */
function velocityAtPower(chain: Chain, power: number, resistance: number): number | null {
  const excess = (omega: number): number => {
    const current = currentAt(chain, omega);
    return (inducedVoltage(chain.motor, omega) + resistance * current) * current - power;
  };
  if (excess(0) >= 0) return 0;
  const greatest = velocityAtInputVoltage(chain, chain.supply.openCircuitVoltage);
  if (!(excess(greatest) >= 0)) return null;
  const { root, converged } = bracketedRoot(excess, 0, greatest, { relativeTolerance: 1e-14, maximumSteps: 200 });
  return converged ? root : null;
}

/** Motor current, A, that goes with it: of the turning propeller, or of a held rotor, R I² = P. */
function currentAtPower(chain: Chain, omega: number, power: number, resistance: number): number {
  return omega > 0 ? currentAt(chain, omega) : Math.sqrt(power / resistance);
}

function upToFull(throttle: number): number | null {
  return throttle <= 1 ? throttle : null;
}

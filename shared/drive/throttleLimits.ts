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
 * Motor current rises with the throttle up to that point, and voltage and power with the current: each limit is first
 * turned into a motor current (closed form or one bracketed root) and the throttle follows without further solving.
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
    const current = currentAtPower(chain, motorPower, chain.motor.resistance);
    add("motor power", motorPower, "W", current === null ? null : throttleAtMotorCurrent(chain, current));
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
  const V = inputVoltage(chain, velocityAtCurrent(chain, current), current);
  const { openCircuitVoltage, resistance } = chain.supply;
  const power = chain.thrusters * V * current + chain.hotelPower;
  const U = voltageUnderPower(openCircuitVoltage, resistance, power);
  return U === null ? null : upToFull(V / U);
}

function throttleAtSupplyCurrent(chain: Chain, supplyCurrent: number): number | null {
  const U = chain.supply.openCircuitVoltage - chain.supply.resistance * supplyCurrent;
  // Below this the supply has collapsed before the current is reached (see solveSteadyState).
  if (!(U > 0) || U < Math.sqrt(chain.supply.resistance * chain.hotelPower) * (1 - 1e-12)) return null;
  const power = U * supplyCurrent - chain.hotelPower;
  if (power <= 0) return 0;
  const current = currentAtPower(chain, power / chain.thrusters, pathResistance(chain));
  if (current === null) return null;
  return upToFull(inputVoltage(chain, velocityAtCurrent(chain, current), current) / U);
}

/** Motor current, A, at which (ω/K_v + R I) I is `power` (W); null if full open-circuit voltage does not reach it. */
function currentAtPower(chain: Chain, power: number, resistance: number): number | null {
  const excess = (current: number): number =>
    (inducedVoltage(chain.motor, velocityAtCurrent(chain, current)) + resistance * current) * current - power;
  const greatest = greatestCurrent(chain);
  if (excess(greatest) < 0) return null;
  const { root, converged } = bracketedRoot(excess, 0, greatest, { relativeTolerance: 1e-14, maximumSteps: 200 });
  return converged ? root : null;
}

/** Motor current, A, at full open-circuit voltage: no throttle on any real supply draws more. */
function greatestCurrent(chain: Chain): number {
  const { openCircuitVoltage } = chain.supply;
  const omega = velocityAtInputVoltage(chain, openCircuitVoltage);
  return omega > 0 ? currentAt(chain, omega) : openCircuitVoltage / pathResistance(chain);
}

function upToFull(throttle: number): number | null {
  return throttle <= 1 ? throttle : null;
}

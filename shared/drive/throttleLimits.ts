import type { DriveRequest, LimitState } from "../model/drive.ts";
import { fillBus } from "./bus.ts";
import type { Chain } from "./chain.ts";
import type { DriveNumbers } from "./driveNumbers.ts";
import { currentAtVoltage, LIMIT_ROWS, type LimitRow } from "./limitNumbers.ts";
import { fillExcess, findPosition, type Goal } from "./positionSearch.ts";
import { emptyState, evaluateShaft } from "./shaftState.ts";

/** A stated limit and the throttle that reaches it, the same for every throttle of a request. */
export type ThrottleLimit = Omit<LimitState, "actual">;

/**
 * Throttle at which each stated limit is reached as the throttle opens from 0; null where full throttle, or the
 * greatest power of the supply, comes first. "supply voltage" is the supply's own limit: half the open-circuit
 * voltage, below which more throttle gives less power to the vehicle as a whole. A limit that is exceeded with nothing
 * drawn, or at speed where the curve of the propeller ends, is reached at 0.
 *
 * Speed and current of the motor rise with the throttle up to that point: each limit is first turned into a state of
 * the motor (one bracketed root) and the throttle follows without further solving.
 * The controller is held against the motor current, which is what its switches carry; pack, fuse and tether against the
 * current of all thrusters and the hotel load.
 */
export function throttleLimits(chain: Chain, request: DriveRequest): ThrottleLimit[] {
  return LIMIT_ROWS.flatMap(({ name, unit, goal, limit: of }) => {
    const limit = of(request);
    if (limit === undefined || (goal === "windingTemperature" && chain.thermalResistance === 0)) return [];
    return [{ name, limit, unit, reachedAtThrottle: throttleAtLimit(chain, goal, limit) }];
  });
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
    case "winding temperature":
      return numbers.windingTemperature;
    case "supply current":
    case "fuse current":
    case "tether current":
      return numbers.supplyCurrent;
    case "least supply voltage":
    case "supply voltage":
      return numbers.supplyVoltage;
    case "cavitation":
    case "ventilation":
      return numbers.rotationRate;
  }
}

/** Throttle above which the supply can not hold the constant power next to the thrusters; null where it always can. */
export function collapseThrottle(chain: Chain): number | null {
  if (chain.supplyResistance === 0 || chain.constantPower === 0) return null;
  return throttleAtLimit(chain, "voltage", chain.collapseVoltage);
}

function throttleAtLimit(chain: Chain, goal: LimitRow["goal"], limit: number): number | null {
  if (goal === "rate") return throttleAtPosition(chain, 2 * Math.PI * chain.gearRatio * limit);
  if (goal === "voltage") return throttleAtGoal(chain, "supplyCurrent", currentAtVoltage(chain, limit));
  return throttleAtGoal(chain, goal, limit);
}

function throttleAtGoal(chain: Chain, goal: Goal, value: number): number | null {
  if (value === Number.POSITIVE_INFINITY) return null;
  const bySupply = goal === "supplyCurrent";
  const busVoltage = chain.supplyVoltage - chain.supplyResistance * (bySupply ? value : 0);
  // Below this the supply has collapsed before the current is reached (see positionSearch.ts).
  if (!(busVoltage > 0) || busVoltage < chain.collapseVoltage * (1 - 1e-12)) return null;
  const [low, high] = [chain.lowestPosition, chain.speedConstant * busVoltage * (1 + 1e-9)];
  if (excessAt(chain, goal, value, low) >= 0) return 0;
  // No throttle up to full turns it faster than this.
  if (!(high > low && excessAt(chain, goal, value, high) > 0)) return null;
  const state = emptyState();
  if (!findPosition(chain, goal, value, low, high, 0.5 * high, state)) return null;
  if (bySupply) return upToFull((state.inputVoltage + chain.freewheelVoltage) / (busVoltage + chain.freewheelVoltage));
  return throttleAtPosition(chain, state.position);
}

function excessAt(chain: Chain, goal: Goal, value: number, position: number): number {
  const state = emptyState();
  state.position = position;
  evaluateShaft(chain, state);
  fillExcess(chain, goal, value, state);
  return state.excess;
}

/** Throttle at a state of the motor, with the bus at what all thrusters and the hotel load draw. */
function throttleAtPosition(chain: Chain, position: number): number | null {
  if (chain.advance > 0 && position < chain.lowestPosition) return 0;
  const state = emptyState();
  state.position = position;
  evaluateShaft(chain, state);
  return fillBus(chain, state) ? upToFull(state.throttle) : null;
}

function upToFull(throttle: number): number | null {
  return throttle <= 1 ? throttle : null;
}

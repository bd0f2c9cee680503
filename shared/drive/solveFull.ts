import { fillBus, supplyCurrentOf } from "./bus.ts";
import { type Chain, thrustAt } from "./chain.ts";
import { slopeOverRate } from "./curveEnd.ts";
import { type LimitNumbers, limitIndex } from "./limitNumbers.ts";
import { fillExcess, findPosition, type Goal } from "./positionSearch.ts";
import { evaluateShaft, motorPowerOf, type SteadyState, windingTemperatureOf } from "./shaftState.ts";
import { drawNothing, solveSteadyState } from "./steadyState.ts";

const MOTOR_POWER = limitIndex("motor power");
const WINDING_TEMPERATURE = limitIndex("winding temperature");

/**
 * Fills and returns `state`: the furthest that the throttle may be opened, up to `throttleCap`, within all limits; its
 * thrust is `thrustOf(chain, state)`. `state.limit` is the place in LIMIT_NAMES of the limit that bounds it, −1 where
 * `throttleCap` does. No allocation.
 *
 * Past the greatest power of the supply more throttle gives less, so that is a limit like the stated ones. A limit that
 * closed throttle exceeds already, or at speed the end of the propeller's curve, leaves a state that draws nothing.
 */
export function solveFull(chain: Chain, limits: LimitNumbers, throttleCap: number, state: SteadyState): SteadyState {
  solveSteadyState(chain, throttleCap, state);
  if (state.status === "collapsed" || supplyCurrentOf(chain, state) > limits.supplyCurrent) {
    if (!withinSupply(chain, limits, state)) return state;
  }
  if (state.status !== "turning" && state.status !== "atRest") return state;
  const reached = state.limit;
  boundMotor(chain, limits, state);
  if (state.limit === reached) return state;
  if (state.position <= chain.lowestPosition) {
    const bound = state.limit;
    drawNothing(chain, 0, state);
    state.limit = bound;
    return state;
  }
  state.status = state.position > 0 ? "turning" : "atRest";
  if (!fillBus(chain, state)) state.status = "collapsed";
  return state;
}

/** Goes back to the greatest supply current; false where closed throttle exceeds it, or the supply can not hold that. */
function withinSupply(chain: Chain, limits: LimitNumbers, state: SteadyState): boolean {
  const { supplyCurrent } = limits;
  const busVoltage = chain.supplyVoltage - chain.supplyResistance * supplyCurrent;
  state.position = chain.lowestPosition;
  evaluateShaft(chain, state);
  fillExcess(chain, "supplyCurrent", supplyCurrent, state);
  if (!(busVoltage > 0) || state.excess >= 0) {
    drawNothing(chain, 0, state);
    state.limit = limits.supplyCurrentLimit;
    return false;
  }
  const high = Math.max(chain.speedConstant * busVoltage, chain.lowestPosition) * (1 + 1e-9) + Number.MIN_VALUE;
  state.converged = findPosition(chain, "supplyCurrent", supplyCurrent, chain.lowestPosition, high, 0.5 * high, state);
  state.busVoltage = busVoltage;
  state.throttle = (state.inputVoltage + chain.freewheelVoltage) / (busVoltage + chain.freewheelVoltage);
  state.status = state.position > 0 ? "turning" : "atRest";
  state.limit = limits.supplyCurrentLimit;
  return true;
}

/** Goes back along the path until no limit of motor, controller and propeller is exceeded; leaves the bus to be filled. */
function boundMotor(chain: Chain, limits: LimitNumbers, state: SteadyState): void {
  if (state.motorCurrent > limits.motorCurrent) {
    goBack(chain, "motorCurrent", limits.motorCurrent, limits.motorCurrentLimit, state);
  }
  if (motorPowerOf(chain, state) > limits.motorPower) {
    goBack(chain, "motorPower", limits.motorPower, MOTOR_POWER, state);
  }
  if (windingTemperatureOf(chain, state) > limits.windingTemperature) {
    goBack(chain, "windingTemperature", limits.windingTemperature, WINDING_TEMPERATURE, state);
  }
  if (state.angularVelocity > limits.angularVelocity) {
    state.position = Math.max(limits.angularVelocity, chain.lowestPosition);
    state.limit = limits.angularVelocityLimit;
    evaluateShaft(chain, state);
  }
}

function goBack(chain: Chain, goal: Goal, value: number, limit: number, state: SteadyState): void {
  const from = state.position;
  const low = chain.lowestPosition;
  state.limit = limit;
  state.position = low;
  evaluateShaft(chain, state);
  fillExcess(chain, goal, value, state);
  if (state.excess >= 0) return;
  // A first guess is the point itself: the quantities curve upwards, so that Newton's steps come down without bisection.
  const high = from > 0 ? from * (1 + 1e-9) : from + Number.MIN_VALUE;
  state.converged = findPosition(chain, goal, value, low, high, from, state) && state.converged;
}

/** Full throttle, and what rounding may add to it. */
const FULL = 1 + 1e-12;

/** What became of a point that was asked for. */
export type Reach = "held" | "beyondFullThrottle" | "beyondLimit" | "beyondSupply" | "beyondCurve" | "runaway";

/**
 * Fills `state` for a propeller that turns at `angularVelocity` of the motor (rad/s): explicit, nothing is searched.
 * Says whether full throttle and all limits hold it; `state.limit` is one that is exceeded. The state is filled also
 * beyond full throttle (then `state.throttle` is above 1) and beyond a limit. No allocation.
 */
export function solveAtSpeed(chain: Chain, limits: LimitNumbers, angularVelocity: number, state: SteadyState): Reach {
  state.limit = -1;
  state.converged = true;
  if (angularVelocity === 0 && chain.advance === 0) {
    drawNothing(chain, 0, state);
    return state.status === "atRest" ? withinLimits(chain, limits, state) : "beyondSupply";
  }
  if (!(angularVelocity > 0 && angularVelocity >= chain.lowestPosition)) return "beyondCurve";
  state.position = angularVelocity;
  evaluateShaft(chain, state);
  if (!Number.isFinite(state.inputVoltage)) {
    state.status = "runaway";
    return "runaway";
  }
  state.status = "turning";
  if (!fillBus(chain, state)) {
    state.status = "collapsed";
    return "beyondSupply";
  }
  if (state.throttle > FULL) return "beyondFullThrottle";
  return withinLimits(chain, limits, state);
}

function withinLimits(chain: Chain, limits: LimitNumbers, state: SteadyState): Reach {
  if (state.motorCurrent > limits.motorCurrent) state.limit = limits.motorCurrentLimit;
  else if (motorPowerOf(chain, state) > limits.motorPower) state.limit = MOTOR_POWER;
  else if (windingTemperatureOf(chain, state) > limits.windingTemperature) state.limit = WINDING_TEMPERATURE;
  else if (supplyCurrentOf(chain, state) > limits.supplyCurrent) state.limit = limits.supplyCurrentLimit;
  else if (state.angularVelocity > limits.angularVelocity) state.limit = limits.angularVelocityLimit;
  return state.limit < 0 ? "held" : "beyondLimit";
}

/**
 * Fills `state` for a thrust (N) of each thruster: at rest explicit, at speed one root. See `solveAtSpeed` for what it
 * says. No allocation.
 *
 *   T = K_T(J) ρ n² D⁴,   n = ω/(2π g)
 */
export function solveForThrust(chain: Chain, limits: LimitNumbers, thrust: number, state: SteadyState): Reach {
  const omega = angularVelocityForThrust(chain, thrust);
  if (!(omega >= 0)) return "beyondCurve";
  const reach = solveAtSpeed(chain, limits, omega, state);
  const missed = omega === 0 ? 0 : thrustAt(chain, omega) - thrust;
  if (Math.abs(missed) > MISSED * (Math.abs(thrust) + chain.thrustUnit * omega * omega)) state.converged = false;
  return reach;
}

/** Share of the thrust that rounding may leave. */
const MISSED = 1e-12;
const STEPS = 60;

/**
 * Angular velocity of the motor, rad/s, at which a propeller pushes with `thrust` (N); −1 where no point of its curve does.
 * At speed by Newton's method from above, where thrust over speed curves upwards: it comes down without passing.
 *
 * Source   safeguarded Newton: Press et al., Numerical Recipes, 3rd ed. (2007), 9.4, from memory.
 * Error    1e-14 of itself; after 60 steps what is left shows in the thrust, which `solveForThrust` checks.
 */
export function angularVelocityForThrust(chain: Chain, thrust: number): number {
  const { thrustUnit, thrustCoefficient, thrustChange, advance, lowestPosition } = chain;
  if (advance === 0) return thrust >= 0 ? Math.sqrt(thrust / (thrustUnit * thrustCoefficient)) : -1;
  if (thrustAt(chain, lowestPosition) > thrust) return -1;
  let low = lowestPosition;
  let high = 2 * lowestPosition + Math.sqrt(Math.max(thrust, 0) / (thrustUnit * thrustCoefficient));
  while (thrustAt(chain, high) < thrust) high *= 2;
  let omega = high;
  for (let step = 0; step < STEPS; step++) {
    const excess = thrustAt(chain, omega) - thrust;
    if (excess > 0) high = omega;
    else low = omega;
    const slope = thrustUnit * omega * slopeOverRate(thrustCoefficient, thrustChange, advance / omega);
    const newton = -excess / slope;
    if (Math.abs(newton) <= 1e-14 * omega) return omega;
    const next = omega + newton;
    omega = next > low && next < high ? next : 0.5 * (low + high);
  }
  return omega;
}

import { electricalPowerOf, fillBus, supplyCurrentOf } from "../drive/bus.ts";
import { type Advance, type Chain, emptyChain, fillChain, rotationRateAt, thrustAt } from "../drive/chain.ts";
import { endOfCurve } from "../drive/curveEnd.ts";
import { emptyLimits, fillLimits, type LimitInputs, type LimitNumbers } from "../drive/limitNumbers.ts";
import {
  emptyState,
  evaluateShaft,
  motorPowerOf,
  type SteadyState,
  windingTemperatureOf,
} from "../drive/shaftState.ts";
import { angularVelocityForThrust, solveFull } from "../drive/solveFull.ts";
import type { CurveInputs, Inputs } from "./inputs.ts";

/** In the place of a rotation rate: the propeller gives no thrust in this state, or it is not known there. */
export const NO_THRUST = -1;
export const NOT_KNOWN = -2;

/** What turning a propeller at one rate takes; made once and filled again. */
export interface Running {
  /** A. */ motorCurrent: number;
  /** W. */ motorPower: number;
  /** K; NaN where the heat of the winding is not followed. */ windingTemperature: number;
  /** Open-circuit voltage that the supply would need behind its resistance, V; Infinity beyond thermal runaway. */
  neededVoltage: number;
  /** The supply holds it; where not, the four below are NaN. */ held: boolean;
  throttle: number;
  /** V. */ supplyVoltage: number;
  /** A. */ supplyCurrent: number;
  /** Into one controller, W. */ electricalPower: number;
}

const none = Number.NaN;

function emptyRunning(): Running {
  return {
    ...{ motorCurrent: none, motorPower: none, windingTemperature: none, neededVoltage: none, held: false },
    ...{ throttle: none, supplyVoltage: none, supplyCurrent: none, electricalPower: none },
  };
}

/**
 * The model of the operating point (shared/drive), asked for one combination after the other without making garbage: the
 * rate that a thrust takes, what that rate takes of motor and supply, and the greatest thrust within limits.
 *
 *   U_needed = W + R_s P/W,   W = max(V, sqrt(R_s P)),   P = N V I + P_c
 *
 * U_needed is the least open-circuit voltage from which full throttle reaches a rate on the upper branch of the supply;
 * the part-throttle losses of the controller are gone there.
 *
 * Source   shared/drive; for U_needed Kirchhoff's voltage law, U_oc = U + R_s P/U, which is least at U = sqrt(R_s P).
 */
export class RateSolver {
  readonly running = emptyRunning();
  private readonly chain: Chain = emptyChain();
  private readonly state: SteadyState = emptyState();
  private readonly limits: LimitNumbers = emptyLimits();

  /** Puts a combination in, with one of its curves and the state that the curve runs in. */
  fill(inputs: Inputs, curve: CurveInputs, advance: Advance | null): void {
    inputs.thrustCoefficient = curve.thrustCoefficient;
    inputs.torqueCoefficient = curve.torqueCoefficient;
    fillChain(this.chain, inputs, advance);
  }

  /** Rotation rate of the propeller, rev/s, that gives a thrust (N); NOT_KNOWN beyond the end of its curve. */
  rateForThrust(thrust: number): number {
    const omega = angularVelocityForThrust(this.chain, thrust);
    return omega >= 0 ? rotationRateAt(this.chain, omega) : NOT_KNOWN;
  }

  /** Greatest rotation rate within limits, rev/s; NaN where closed throttle exceeds them or the supply collapses. */
  greatestRate(bounds: LimitInputs): number {
    const { chain, state, limits } = this;
    solveFull(chain, fillLimits(limits, bounds, chain), 1, state);
    return state.status === "turning" ? rotationRateAt(chain, state.angularVelocity) : Number.NaN;
  }

  /** Thrust of the propeller, N, at a rotation rate (rev/s). */
  thrustAt(rate: number): number {
    return thrustAt(this.chain, 2 * Math.PI * rate * this.chain.gearRatio);
  }

  /** Fills `running` for a rotation rate of the propeller, rev/s. */
  runAt(rate: number): Running {
    const { chain, state, running } = this;
    state.position = 2 * Math.PI * rate * chain.gearRatio;
    state.status = "turning";
    evaluateShaft(chain, state);
    const { inputVoltage: V, motorCurrent: I } = state;
    running.motorCurrent = I;
    running.motorPower = motorPowerOf(chain, state);
    running.windingTemperature = chain.thermalResistance === 0 ? none : windingTemperatureOf(chain, state);
    running.neededVoltage = neededVoltage(chain, V, I);
    running.held = fillBus(chain, state);
    if (!running.held) return this.notHeld();
    running.throttle = state.throttle;
    running.supplyVoltage = state.busVoltage;
    running.supplyCurrent = supplyCurrentOf(chain, state);
    running.electricalPower = electricalPowerOf(chain, state);
    return running;
  }

  private notHeld(): Running {
    const { running } = this;
    running.throttle = none;
    running.supplyVoltage = none;
    running.supplyCurrent = none;
    running.electricalPower = none;
    return running;
  }
}

/** A curve at an advance speed (m/s); null at rest, and where nothing is known of it at speed. */
export function advanceOf({ torqueCoefficient, openWater }: CurveInputs, advanceSpeed: number): Advance | null {
  if (advanceSpeed === 0 || openWater === null) return null;
  return { advanceSpeed, openWater, end: endOfCurve(torqueCoefficient, openWater) };
}

function neededVoltage(chain: Chain, V: number, I: number): number {
  if (!Number.isFinite(V)) return Infinity;
  const drop = chain.supplyResistance * (chain.thrusters * V * I + chain.constantPower);
  const W = Math.max(V, Math.sqrt(drop));
  return W === 0 ? 0 : W + drop / W;
}

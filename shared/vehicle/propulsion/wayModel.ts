import { electricalPowerOf } from "../../drive/bus.ts";
import { type Chain, chainOf, thrustAt } from "../../drive/chain.ts";
import { emptyLimits, fillLimits, type LimitNumbers, limitInputsOf } from "../../drive/limitNumbers.ts";
import { solveForThrust, solveFull } from "../../drive/solveFull.ts";
import { emptyState, type SteadyState } from "../../drive/steadyState.ts";
import type { DriveRequest } from "../../model/drive.ts";
import type { DriveWays } from "./vehicleNumbers.ts";

/** One kind of thruster pushing one way, at rest and at 1 m/s; a state at any speed follows by proportion. */
export interface WayModel {
  readonly rest: Chain;
  /** Null: its coefficients are known at rest only. */ readonly moving: Chain | null;
  readonly limits: LimitNumbers;
}

export interface DriveModel {
  readonly name: string;
  readonly ahead: WayModel;
  readonly astern: WayModel | null;
}

/** Both ways of a drive, from what is asked of it at rest. */
export function driveModel({ name, ahead, astern }: DriveWays): DriveModel {
  return { name, ahead: wayModel(ahead), astern: astern && wayModel(astern) };
}

function wayModel(request: DriveRequest): WayModel {
  const rest = chainOf(request);
  const moving = request.openWater ? chainOf({ ...request, advanceSpeed: 1 }) : null;
  return { rest, moving, limits: fillLimits(emptyLimits(), limitInputsOf(request), rest) };
}

/** One way of a drive at one inflow: every thruster that works so shares it. The bus voltage is set for each use. */
export interface WayAtSpeed {
  readonly chain: Chain;
  readonly limits: LimitNumbers;
  /** Room for its greatest state, and for any other. */
  readonly full: SteadyState;
  readonly part: SteadyState;
  /** Greatest thrust at the voltage last set, N. */
  greatest: number;
  /** Power into the controller there, W. */
  greatestPower: number;
  /** Thrust that was asked for last at that voltage, N, and its power, W: thrusters that share a way mostly push alike. */
  asked: { thrust: number; power: number };
  /** Thrust and power where the curve of the propeller ends, N and W: less thrust is a share of them. */
  least: { readonly thrust: number; readonly power: number } | null;
}

/** Pushing with water coming in at `inflow`, m/s; against the push it is counted as at rest. */
export function wayAtSpeed({ rest, moving, limits }: WayModel, inflow: number): WayAtSpeed {
  const V = Math.max(0, inflow);
  const at = moving === null || V === 0 ? rest : moving;
  // J ω and the end of the curve both go with the speed that the chain was made for, 1 m/s.
  const chain = at === rest ? { ...rest } : { ...at, advance: at.advance * V, lowestPosition: at.lowestPosition * V };
  const room = { greatest: 0, greatestPower: 0, asked: { ...NOT_ASKED } };
  return { chain, limits, full: emptyState(), part: emptyState(), ...room, least: null };
}

/** Sets the bus voltage, V, and fills the greatest state within all limits of the drive. */
export function setVoltage(way: WayAtSpeed, voltage: number): void {
  const { chain, limits, full } = way;
  chain.supplyVoltage = voltage;
  solveFull(chain, limits, 1, full);
  const turning = full.status === "turning";
  way.greatest = turning ? Math.max(0, thrustAt(chain, full.angularVelocity)) : 0;
  way.greatestPower = electricalPowerOf(chain, full);
  way.least = null;
  way.asked.thrust = NOT_ASKED.thrust;
}

/** No thrust was asked for yet. */
const NOT_ASKED = { thrust: -1, power: 0 } as const;

/** Part of the greatest thrust by which rounding may pass it. */
const HAIR = 1e-9;

/** Thrusts that differ by this part are the same but for rounding. */
const ROUNDING = 1e-14;

/** Power into the controller for a thrust (N, without sign) that is within the greatest, W; `way.part` is that state. */
export function powerForThrust(way: WayAtSpeed, thrust: number): number {
  const { asked, chain } = way;
  if (!(thrust > 0)) return chain.standbyPower;
  if (Math.abs(thrust - asked.thrust) > ROUNDING * thrust) {
    asked.power = solvedPower(way, thrust);
    asked.thrust = thrust;
  }
  return asked.power;
}

function solvedPower(way: WayAtSpeed, thrust: number): number {
  const { chain, limits, part } = way;
  if (thrust >= way.greatest * (1 - HAIR)) {
    Object.assign(part, way.full);
    return way.greatestPower;
  }
  if (chain.advance > 0) {
    way.least ??= endOf(way);
    if (thrust < way.least.thrust) {
      // Below the end of its curve nothing is known of the propeller: the power goes in proportion.
      solveForThrust(chain, limits, way.least.thrust * (1 + HAIR), part);
      return chain.standbyPower + (way.least.power - chain.standbyPower) * (thrust / way.least.thrust);
    }
  }
  solveForThrust(chain, limits, thrust, part);
  return electricalPowerOf(chain, part);
}

function endOf({ chain, limits, part }: WayAtSpeed): { thrust: number; power: number } {
  const thrust = Math.max(0, thrustAt(chain, chain.lowestPosition));
  if (thrust === 0) return { thrust, power: chain.standbyPower };
  solveForThrust(chain, limits, thrust * (1 + HAIR), part);
  return { thrust, power: electricalPowerOf(chain, part) };
}

import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { staticMerit } from "../propeller/staticMerit.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { greatestSupplyPower } from "../supply/busVoltage.ts";
import { type Chain, chainOf } from "./chain.ts";
import { driveLosses, driveNumbers, ratio } from "./driveNumbers.ts";
import { driveUncertainties } from "./driveUncertainty.ts";
import { driveWarnings, noSlopeAtCollapse } from "./driveWarnings.ts";
import { requireDrive } from "./requireDrive.ts";
import { emptyState, type SteadyState, solveSteadyState } from "./steadyState.ts";
import {
  collapseThrottle,
  governingLimit,
  limitedQuantity,
  type ThrottleLimit,
  throttleLimits,
} from "./throttleLimits.ts";

/**
 * Bollard thrust, currents, powers and limits of N equal thrusters and a hotel load on one supply at one throttle.
 *
 *   δ U = ω/K_v + I_m (R_m + R_c)          controller as an ideal converter with a resistance
 *   Q = K_t (I_m − I_0 − b ω) = K_Q ρ n² D⁵,   T = K_T ρ n² D⁴
 *   I_s = N δ I_m + P_h/U,   U = U_oc − R_s I_s
 *
 * The energy balance U_oc I_s = R_s I_s² + P_h + N (I_m² R_c + I_m² R_m + friction + shaft) closes to rounding.
 *
 * Source   Erickson & Maksimovic, Fundamentals of Power Electronics, 2nd ed. (2001), ch. 3, for the averaged converter;
 *          any dc-motor text; momentum theory for the static merit.
 * Assumes  bollard, all thrusters alike and far apart, steady temperature as at the resistances given, controller
 *          losses proportional to I_m², continuous motor current, coefficients that do not change with Reynolds number.
 * Range    throttle 0 to 1. Below the throttle that overcomes friction the motor stands (warned); ratios are 0 where
 *          nothing is drawn.
 * Error    first-order propagation of the uncertainties in the request: see driveUncertainties.
 * Throws   OutOfDomain `drive.not-physical` with the field in `where`; `supply.collapse` where the supply can not hold
 *          the loads.
 */
export function operatingPoint(request: DriveRequest): OperatingPoint {
  requireDrive(request);
  const chain = chainOf(request);
  const state = emptyState();
  solveSteadyState(chain, request.throttle, state);
  if (state.status === "collapsed") throw collapsed(request, chain);
  return describePoint(request, { chain, state, limits: throttleLimits(chain, request.limits) });
}

/** What a solved chain comes from: one point needs it once, a sweep shares chain and limits between its points. */
export interface SolvedChain {
  readonly chain: Chain;
  /** Steady state at the throttle of the request, not collapsed. */ readonly state: SteadyState;
  readonly limits: readonly ThrottleLimit[];
}

/** The operating point that belongs to a solved chain. */
export function describePoint(request: DriveRequest, { chain, state, limits }: SolvedChain): OperatingPoint {
  const numbers = driveNumbers(chain, request.throttle, state);
  const motorPower = numbers.motorVoltage * numbers.motorCurrent;
  const uncertainties = driveUncertainties(request, numbers);
  const point = {
    ...numbers,
    efficiencies: {
      supply: numbers.supplyVoltage / request.supplyVoltage,
      controller: ratio(motorPower, numbers.electricalPower),
      motor: ratio(numbers.shaftPower, motorPower),
      propeller: staticMerit({
        thrustCoefficient: request.thrustCoefficient,
        powerCoefficient: 2 * Math.PI * request.torqueCoefficient,
      }),
    },
    losses: driveLosses(chain, state, numbers),
    limits: limits.map((limit) => ({ ...limit, actual: limitedQuantity(limit.name, numbers) })),
    governingLimit: governingLimit(limits),
    uncertainties: uncertainties === "collapsed" ? null : uncertainties,
  };
  const warnings = driveWarnings({ request, chain, state, point });
  if (uncertainties === "collapsed") warnings.push(noSlopeAtCollapse());
  return { ...point, warnings };
}

function collapsed(request: DriveRequest, chain: Chain): OutOfDomain {
  const reached = collapseThrottle(chain);
  const most = formatNumber(greatestSupplyPower(chain.supply));
  const held = reached === null || reached === 0 ? "" : `; up to throttle ${formatNumber(reached)} it holds`;
  return new OutOfDomain({
    code: "supply.collapse",
    where: "throttle",
    found: `The supply collapses at throttle ${formatNumber(request.throttle)} with ${formatNumber(request.hotelPower)} W of hotel load: ${formatNumber(request.supplyVoltage)} V behind ${formatNumber(request.supplyResistance)} Ω gives ${most} W at most${held}`,
    needed: "loads that the supply can hold",
    mend: "Open the throttle less, or use a pack or lead of lower resistance",
  });
}

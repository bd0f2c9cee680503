import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { inducedVelocity } from "../propeller/momentum.ts";
import { staticMerit } from "../propeller/staticMerit.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { greatestSupplyPower, supplyCollapse } from "../supply/busVoltage.ts";
import { type Chain, chainOf } from "./chain.ts";
import { chainEfficiencies, type DriveNumbers, driveLosses, driveNumbers, ratio } from "./driveNumbers.ts";
import { driveUncertainties } from "./driveUncertainty.ts";
import { driveWarnings, noSlope } from "./driveWarnings.ts";
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
 * Thrust, currents, powers, winding temperature and limits of N equal thrusters and a hotel load on one supply at one
 * throttle, at rest or at a speed through the water.
 *
 *   V = ω/K_v + I_m (R_m(T) + R_c),   R_m(T) = R_0 (1 + α (T − T_0)),   T = T_w + R_th (I_m² R_m(T) + (I_0 + b ω) ω/K_v)
 *   δ U − (1 − δ) U_f = V             controller as a converter whose current freewheels for the rest of each period
 *   I_m = K_v (Q/(g η_g) + k ω^m) + I_0 + b ω,   n = ω/(2π g),   J = V_A/(n D)
 *   Q = K_Q(J) ρ n² D⁵,   T = K_T(J) ρ n² D⁴
 *   I_s = N [I_m (δ + κ (1 − δ)) + P_0/U] + P_h/U,   U = U_oc − R_s I_s
 *
 * The energy balance closes to rounding: U_oc I_s = R_s I_s² + P_h + N (standby + part throttle + I_m² R_c + I_m² R_m +
 * friction + water in the motor + gear + propeller shaft).
 *
 * Source   Erickson & Maksimovic, Fundamentals of Power Electronics, 2nd ed. (2001), ch. 3 for the averaged converter and
 *          its freewheel, ch. 4 for switching in proportion to U I; that it dies away as 1 − δ is common practice, no
 *          source. Any dc-motor text; IEC 60028:1925 for copper; momentum theory for the merit.
 * Assumes  all thrusters alike and far apart, steady temperature, continuous motor current that does not run backwards,
 *          coefficients that do not change with Reynolds number.
 * Range    throttle 0 to 1. Below the throttle that overcomes friction the motor stands (warned); ratios are 0 where
 *          nothing is drawn. At speed, below the rate at which J reaches the end of the curves, or torque falls to 0, the
 *          status is "windmilling": thrust and torque are not known, which is warned of. Fed by a voltage a winding
 *          always comes to rest below its current of thermal runaway, if at an absurd temperature (warned).
 * Error    first-order propagation of the uncertainties in the request: see driveUncertainties; driveMonteCarlo to check.
 * Throws   OutOfDomain as `requireDrive`; `supply.collapse` where the supply can not hold the loads.
 */
export function operatingPoint(request: DriveRequest): OperatingPoint {
  requireDrive(request);
  const chain = chainOf(request);
  const state = emptyState();
  solveSteadyState(chain, request.throttle, state);
  if (state.status === "collapsed") throw collapsed(request, chain);
  return describePoint(request, { chain, state, limits: throttleLimits(chain, request) });
}

/** What a solved chain comes from: one point needs it once, a sweep shares chain and limits between its points. */
export interface SolvedChain {
  readonly chain: Chain;
  /** Steady state at the throttle of the request, not collapsed. */ readonly state: SteadyState;
  readonly limits: readonly ThrottleLimit[];
}

/** The operating point that belongs to a solved chain. */
export function describePoint(request: DriveRequest, { chain, state, limits }: SolvedChain): OperatingPoint {
  const numbers = driveNumbers(chain, state);
  const uncertainties = driveUncertainties(request, { numbers, status: state.status });
  const point = {
    status: pointStatus(state),
    ...numbers,
    efficiencies: { ...chainEfficiencies(chain, state, numbers), propeller: propellerEfficiency(request, numbers) },
    losses: driveLosses(chain, state, numbers),
    limits: limits.map((limit) => ({ ...limit, actual: limitedQuantity(limit.name, numbers) })),
    governingLimit: governingLimit(limits),
    uncertainties: uncertainties === "noSlope" ? null : uncertainties,
  };
  const warnings = driveWarnings({ request, chain, state, point });
  if (uncertainties === "noSlope") warnings.push(noSlope());
  return { ...point, warnings };
}

function pointStatus({ status }: SteadyState): OperatingPoint["status"] {
  return status === "turning" || status === "windmilling" ? status : "atRest";
}

/** Ideal over real shaft power: the static merit at rest, T (V_A + v)/P at speed; 0 where the propeller does not push. */
function propellerEfficiency(request: DriveRequest, { thrust, shaftPower }: DriveNumbers): number {
  const { thrustCoefficient, torqueCoefficient, advanceSpeed, diameter, density } = request;
  if (advanceSpeed === 0) return staticMerit({ thrustCoefficient, powerCoefficient: 2 * Math.PI * torqueCoefficient });
  if (!(thrust > 0)) return 0;
  const disc = { thrust, discArea: (Math.PI / 4) * diameter ** 2, density, advanceSpeed };
  return ratio(thrust * (advanceSpeed + inducedVelocity(disc)), shaftPower);
}

function collapsed(request: DriveRequest, chain: Chain): OutOfDomain {
  const reached = collapseThrottle(chain);
  const supply = { openCircuitVoltage: chain.supplyVoltage, resistance: chain.supplyResistance };
  const greatest = greatestSupplyPower(supply);
  if (chain.constantPower > greatest) {
    const alone = `a hotel load and controllers of ${formatNumber(chain.constantPower)} W, with the thrusters at rest already`;
    return supplyCollapse(supply, alone);
  }
  const most = formatNumber(greatest);
  const held = reached === null || reached === 0 ? "" : `; up to throttle ${formatNumber(reached)} it holds`;
  return new OutOfDomain({
    code: "supply.collapse",
    where: "throttle",
    found: `The supply collapses at throttle ${formatNumber(request.throttle)} with ${formatNumber(chain.constantPower)} W of hotel load and controllers: ${formatNumber(request.supplyVoltage)} V behind ${formatNumber(request.supplyResistance)} Ω gives ${most} W at most${held}`,
    needed: "loads that the supply can hold",
    mend: "Open the throttle less, or use a pack or lead of lower resistance",
  });
}

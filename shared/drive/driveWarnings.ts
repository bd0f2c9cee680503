import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { noLoadCurrentAt } from "../motor/motorConstants.ts";
import { motorProblems } from "../motor/motorProblems.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { type Chain, pathResistance } from "./chain.ts";
import type { SteadyState } from "./steadyState.ts";

export interface PointToWarnOf {
  readonly request: DriveRequest;
  readonly chain: Chain;
  readonly state: SteadyState;
  readonly point: Omit<OperatingPoint, "warnings">;
}

/** What a reader must know next to an operating point. */
export function driveWarnings(about: PointToWarnOf): Warning[] {
  return [
    ...motorProblems(about.chain.motor, about.request.supplyVoltage),
    aboveMomentumLimit(about),
    notConverged(about),
    standing(about),
    pastGreatestPower(about),
    ...limitsExceeded(about),
  ].filter((found) => found !== null);
}

/** The warning that stands in the place of uncertainties where the supply is about to collapse. */
export function noSlopeAtCollapse(): Warning {
  return warning({
    code: "drive.uncertainty-at-collapse",
    where: "uncertainties",
    found: "The supply is so close to collapse that the doubt of this point has no bound",
    needed: "a point the supply can hold with every input a little worse",
    mend: "Open the throttle less, or use a supply of lower resistance",
  });
}

/** The warning on the last point of a sweep that the supply cuts short. */
export function sweepCutShort(throttle: number): Warning {
  return warning({
    code: "drive.sweep-cut-short",
    where: "throttle",
    found: `Above throttle ${formatNumber(throttle)} the supply collapses, so the sweep ends there`,
    needed: "a supply that can hold the hotel load next to the thrusters",
    mend: "Use a pack or lead of lower resistance, or fewer thrusters at once",
  });
}

function aboveMomentumLimit({ point }: PointToWarnOf): Warning | null {
  const merit = point.efficiencies.propeller;
  if (merit <= 1) return null;
  return warning({
    code: "drive.above-momentum-limit",
    where: "thrustCoefficient",
    found: `Thrust and torque coefficient together give a static merit of ${formatNumber(merit)}`,
    needed: "less than 1 for an open propeller, up to about 1.4 in a nozzle",
    mend: "Check that both belong to the same propeller, and the units of thrust, torque and diameter behind them",
  });
}

function notConverged({ state }: PointToWarnOf): Warning | null {
  if (state.converged) return null;
  return warning({
    code: "drive.not-converged",
    where: "throttle",
    found: "The steady state was not found to full precision",
    needed: "a root within rounding",
    mend: "Treat the last digits with care",
  });
}

function standing({ request, chain, state }: PointToWarnOf): Warning | null {
  if (request.throttle === 0 || state.status === "turning") return null;
  const needed = noLoadCurrentAt(chain.motor, 0) * pathResistance(chain);
  return warning({
    code: "drive.motor-at-rest",
    where: "throttle",
    found: `At throttle ${formatNumber(request.throttle)} the motor gets ${formatNumber(request.throttle * state.busVoltage)} V and does not turn`,
    needed: `more than ${formatNumber(needed)} V to overcome its friction`,
    mend: "Open the throttle further",
  });
}

function pastGreatestPower({ chain, state }: PointToWarnOf): Warning | null {
  const { openCircuitVoltage } = chain.supply;
  if (state.busVoltage >= openCircuitVoltage / 2) return null;
  return warning({
    code: "drive.past-greatest-power",
    where: "supplyVoltage",
    found: `The supply is down to ${formatNumber(state.busVoltage)} V, below half of ${formatNumber(openCircuitVoltage)} V: more throttle now gives less power to the vehicle as a whole`,
    needed: `at least ${formatNumber(openCircuitVoltage / 2)} V`,
    mend: "Open the throttle less, run fewer thrusters at once, or use a supply of lower resistance",
  });
}

function limitsExceeded({ point }: PointToWarnOf): Warning[] {
  return point.limits
    .filter(({ name, limit, actual }) => name !== "supply voltage" && actual > limit)
    .map(({ name, limit, actual, unit, reachedAtThrottle }) =>
      warning({
        code: "drive.limit-exceeded",
        where: name,
        found: `The ${name} is ${formatNumber(actual)} ${unit}`,
        needed: `at most ${formatNumber(limit)} ${unit}${reachedAtThrottle === null ? "" : `, reached at throttle ${formatNumber(reachedAtThrottle)}`}`,
        mend: "Hold the throttle below that, or use a part with a higher rating; go by the maker's data sheet",
      }),
    );
}

import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { HIGHEST_INSULATION, motorHeatProblems } from "../motor/motorHeatProblems.ts";
import { motorProblems } from "../motor/motorProblems.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import type { Chain } from "./chain.ts";
import { allowedInWords, limitAmount, limitedInWords, passedLimits } from "./passedLimits.ts";
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
    ...ofMotor(about.request),
    aboveMomentumLimit(about),
    notConverged(about),
    standing(about),
    beyondCurve(about),
    braking(about),
    tooHot(about),
    pastGreatestPower(about),
    ...limitsExceeded(about),
  ].filter((found) => found !== null);
}

/** The warning that stands in the place of uncertainties where a doubt reaches past the end of what is defined. */
export function noSlope(): Warning {
  return warning({
    code: "drive.uncertainty-at-collapse",
    where: "uncertainties",
    found:
      "The supply is so close to collapse, or the propeller to the end of its curve, that the doubt of this point has no bound",
    needed: "a point that holds with every input a little worse",
    mend: "Open the throttle less, or use a supply of lower resistance; at speed open it more",
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

function ofMotor(request: DriveRequest): Warning[] {
  const { heat, limits, supplyVoltage } = request;
  const motor = { ...request, resistance: request.motorResistance };
  const found = motorProblems(motor, supplyVoltage);
  if (heat === undefined) return found;
  const rating = limits.motorCurrent === undefined ? {} : { currentLimit: limits.motorCurrent };
  return [...found, ...motorHeatProblems({ ...heat, resistance: motor.resistance, ...rating })];
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
  if (request.throttle === 0 || state.status !== "atRest") return null;
  const needed = request.noLoadCurrent * (state.motorResistance + chain.controllerResistance);
  return warning({
    code: "drive.motor-at-rest",
    where: "throttle",
    found: `At throttle ${formatNumber(request.throttle)} the motor gets ${formatNumber(state.inputVoltage)} V and does not turn`,
    needed: `more than ${formatNumber(needed)} V to overcome its friction`,
    mend: "Open the throttle further",
  });
}

function beyondCurve({ request, state, point }: PointToWarnOf): Warning | null {
  if (state.status !== "windmilling") return null;
  const V = `${formatNumber(request.advanceSpeed)} m/s`;
  return warning({
    code: "drive.beyond-curve",
    where: "throttle",
    found: `At throttle ${formatNumber(request.throttle)} and ${V} the propeller would turn slower than ${formatNumber(60 * point.rotationRate)} rpm, where its curves end or the water begins to drive it: thrust and torque are not known`,
    needed: "coefficients at higher advance ratios, or more throttle",
    mend: "Take the numbers shown as those at the end of the curve, with nothing drawn",
  });
}

function braking({ state, point }: PointToWarnOf): Warning | null {
  if (state.status !== "turning" || point.thrust >= 0) return null;
  return warning({
    code: "drive.thrust-backwards",
    where: "throttle",
    found: `The propeller turns too slowly for this speed: it holds back with ${formatNumber(-point.thrust)} N`,
    needed: "an advance ratio below that of zero thrust",
    mend: "Open the throttle further",
  });
}

function tooHot({ request, point }: PointToWarnOf): Warning | null {
  const T = point.windingTemperature;
  if (request.heat === undefined || request.heat.temperatureLimit !== undefined || T <= HIGHEST_INSULATION) return null;
  return warning({
    code: "drive.winding-too-hot",
    where: "heat",
    found: `Held for long, this point would bring the winding to ${celsius(T)}`,
    needed: `less than ${celsius(HIGHEST_INSULATION)}, the highest common class of insulation; magnets give way earlier`,
    mend: "Hold it for short times only, and go by the maker's continuous rating",
  });
}

const celsius = (T: number) => `${formatNumber(T - 273.15)} °C`;

function pastGreatestPower({ chain, state }: PointToWarnOf): Warning | null {
  const { supplyVoltage } = chain;
  if (state.busVoltage >= supplyVoltage / 2) return null;
  return warning({
    code: "drive.past-greatest-power",
    where: "supplyVoltage",
    found: `The supply is down to ${formatNumber(state.busVoltage)} V, below half of ${formatNumber(supplyVoltage)} V: more throttle now gives less power to the vehicle as a whole`,
    needed: `at least ${formatNumber(supplyVoltage / 2)} V`,
    mend: "Open the throttle less, run fewer thrusters at once, or use a supply of lower resistance",
  });
}

function limitsExceeded({ point }: PointToWarnOf): Warning[] {
  return passedLimits(point.limits).map((state) =>
    warning({
      code: "drive.limit-exceeded",
      where: state.name,
      found: `The ${limitedInWords(state.name)} is ${limitAmount(state.actual, state.unit)}`,
      needed: `${allowedInWords(state)}${state.reachedAtThrottle === null ? "" : `, reached at throttle ${formatNumber(state.reachedAtThrottle)}`}`,
      mend: "Hold the throttle below that, or use a part with a higher rating; go by the maker's data sheet",
    }),
  );
}

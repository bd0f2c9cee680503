import type { DriveRequest, OperatingPoint } from "../model/drive.ts";
import { uncertain } from "../quantity/uncertain.ts";
import { chainOf } from "./chain.ts";
import { type DriveNumbers, driveNumbers } from "./driveNumbers.ts";
import { emptyState, solveSteadyState } from "./steadyState.ts";

type UncertainInput = keyof DriveRequest["uncertainties"];
type Output = keyof DriveNumbers;

// Truncation of the central difference (h²) and rounding of the solved state (1e-15/h) balance near 1e-5.
const RELATIVE_STEP = 1e-5;

/**
 * Standard uncertainties of an operating point by the law of propagation (JCGM 100:2008, 5.1.2), sensitivities by
 * central differences of the solved chain; intervals at k = 1.96.
 *
 * Assumes  the inputs are independent but for the motor constants, whose correlations the request carries (5.2.2).
 *          Measured thrust and torque coefficients are not quite: they share the diameter,
 *          the density and the rotation rate, and a request carries no correlation. Their errors then mostly go the
 *          same way, so the doubt of thrust per power is overstated; that of thrust and current hardly changes.
 *          First order: with inputs doubtful by more than some 10 %, or close to a limit of the supply, the true
 *          interval is lopsided.
 * Returns  null where no uncertainty was given; "collapsed" where a neighbouring input makes the supply collapse, so
 *          that there is no slope to go by.
 */
export function driveUncertainties(
  request: DriveRequest,
  numbers: DriveNumbers,
): OperatingPoint["uncertainties"] | "collapsed" {
  const outputs = Object.keys(numbers) as Output[];
  const variances: DriveNumbers = { ...numbers };
  for (const name of outputs) variances[name] = 0;
  const given = Object.entries(request.uncertainties) as [UncertainInput, number][];
  if (given.length === 0) return null;
  const slopesOf = new Map<UncertainInput, DriveNumbers>();
  for (const [input, u] of given) {
    if (u === 0) continue;
    const slopes = slopesBy(request, input, u);
    if (slopes === null) return "collapsed";
    slopesOf.set(input, slopes);
    for (const name of outputs) variances[name] += (slopes[name] * u) ** 2;
  }
  for (const { of, and, coefficient } of request.correlations) {
    const [a, b] = [slopesOf.get(of), slopesOf.get(and)];
    if (!a || !b || of === and) continue;
    const shared = 2 * coefficient * request.uncertainties[of]! * request.uncertainties[and]!;
    for (const name of outputs) variances[name] += shared * a[name] * b[name];
  }
  // Correlations that can not hold together would leave less than nothing.
  for (const name of outputs) variances[name] = Math.max(0, variances[name]);
  return Object.fromEntries(outputs.map((name) => [name, uncertain(numbers[name], Math.sqrt(variances[name]))]));
}

function slopesBy(request: DriveRequest, input: UncertainInput, u: number): DriveNumbers | null {
  const x = request[input];
  // A resistance of zero has no size of its own to take a step of; its uncertainty has.
  const step = x === 0 ? RELATIVE_STEP * u : RELATIVE_STEP * x;
  const [low, high] = [Math.max(0, x - step), x + step];
  const [below, above] = [numbersWith(request, input, low), numbersWith(request, input, high)];
  if (below === null || above === null) return null;
  const slopes: DriveNumbers = { ...above };
  for (const name of Object.keys(slopes) as Output[]) slopes[name] = (above[name] - below[name]) / (high - low);
  return slopes;
}

function numbersWith(request: DriveRequest, input: UncertainInput, x: number): DriveNumbers | null {
  const chain = chainOf({ ...request, [input]: x });
  const state = emptyState();
  solveSteadyState(chain, request.throttle, state);
  return state.status === "collapsed" ? null : driveNumbers(chain, request.throttle, state);
}

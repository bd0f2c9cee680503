import type { DriveRequest, OperatingPoint, UncertainInput } from "../model/drive.ts";
import { uncertain } from "../quantity/uncertain.ts";
import { chainOf } from "./chain.ts";
import { type DriveNumbers, driveNumbers } from "./driveNumbers.ts";
import { emptyState, type SteadyState, solveSteadyState } from "./steadyState.ts";
import { inputValue, withInput } from "./uncertainInput.ts";

type Output = keyof DriveNumbers;

// Truncation of the central difference (h²) and rounding of the solved state (1e-15/h) balance near 1e-5.
const RELATIVE_STEP = 1e-5;

/** Doubt of this share is what the differences leave of rounding, as of an efficiency that nothing lowers. */
const ROUNDING = 1e-11;

/** The point that uncertainties are asked for. */
export interface SolvedNumbers {
  readonly numbers: DriveNumbers;
  readonly status: SteadyState["status"];
}

/**
 * Standard uncertainties of an operating point by the law of propagation (JCGM 100:2008, 5.1.2), sensitivities by
 * central differences of the solved chain; intervals at k = 1.96.
 *
 * Assumes  the inputs are independent but for the correlations that the request carries (5.2.2). Measured thrust and
 *          torque coefficients share diameter, density and rotation rate: without their correlation the doubt of thrust
 *          per power is overstated; that of thrust and current hardly changes.
 *          First order: with inputs doubtful by more than some 10 %, or close to a limit of the supply, the true
 *          interval is lopsided: `driveMonteCarlo` shows it.
 * Returns  null where no uncertainty was given, or nothing is known of the point ("windmilling"); "noSlope" where a
 *          neighbouring input makes the supply collapse or the propeller leave its curve.
 */
export function driveUncertainties(
  request: DriveRequest,
  { numbers, status }: SolvedNumbers,
): OperatingPoint["uncertainties"] | "noSlope" {
  const outputs = Object.keys(numbers) as Output[];
  const variances: DriveNumbers = { ...numbers };
  for (const name of outputs) variances[name] = 0;
  const given = Object.entries(request.uncertainties) as [UncertainInput, number][];
  if (given.length === 0 || status === "windmilling") return null;
  const slopesOf = new Map<UncertainInput, DriveNumbers>();
  for (const [input, u] of given) {
    const x = inputValue(request, input);
    if (u === 0 || x === null) continue;
    const slopes = slopesBy(request, { input, x, u });
    if (slopes === null) return "noSlope";
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
  return Object.fromEntries(
    outputs.map((name) => {
      const u = Math.sqrt(variances[name]);
      return [name, uncertain(numbers[name], u > ROUNDING * Math.abs(numbers[name]) ? u : 0)];
    }),
  );
}

interface DoubtfulInput {
  readonly input: UncertainInput;
  readonly x: number;
  readonly u: number;
}

function slopesBy(request: DriveRequest, { input, x, u }: DoubtfulInput): DriveNumbers | null {
  // A resistance of zero has no size of its own to take a step of; its uncertainty has.
  const step = x === 0 ? RELATIVE_STEP * u : RELATIVE_STEP * x;
  const [low, high] = [Math.max(0, x - step), x + step];
  const [below, above] = [low, high].map((value) => numbersOf(withInput(request, input, value)));
  if (!below || !above) return null;
  const slopes: DriveNumbers = { ...above };
  for (const name of Object.keys(slopes) as Output[]) slopes[name] = (above[name] - below[name]) / (high - low);
  return slopes;
}

/** Numbers of a request; null where the supply collapses or the propeller is beyond its curve. */
function numbersOf(request: DriveRequest): DriveNumbers | null {
  const chain = chainOf(request);
  const state = solveSteadyState(chain, request.throttle, emptyState());
  return state.status === "turning" || state.status === "atRest" ? driveNumbers(chain, state) : null;
}

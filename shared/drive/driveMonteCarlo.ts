import {
  type DriveRequest,
  OPERATING_POINT_NUMBERS,
  type OperatingPoint,
  type UncertainInput,
} from "../model/drive.ts";
import { DRIVE_DRAWS, type DriveDrawn, type DriveDraws, type DriveMonteCarlo } from "../model/driveMonteCarlo.ts";
import { independentCauses } from "../motor/motorCovariance.ts";
import { normalDraw, type Uniform } from "../numeric/distributions.ts";
import { againstFirstOrder } from "../numeric/monteCarlo.ts";
import { uniformsFrom } from "../numeric/pcg32.ts";
import { within } from "../quantity/domain.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { chainOf } from "./chain.ts";
import { type DriveNumbers, driveNumbers } from "./driveNumbers.ts";
import { operatingPoint } from "./operatingPoint.ts";
import { requireDrive } from "./requireDrive.ts";
import { emptyState, solveSteadyState } from "./steadyState.ts";
import { changeable, inputValue, putInput } from "./uncertainInput.ts";

const QUANTITIES = Object.keys(OPERATING_POINT_NUMBERS) as (keyof DriveNumbers)[];

/** What a draw gave. */
type Drawn = DriveNumbers | "collapsed" | "beyondCurve" | "notPhysical";

/**
 * An operating point by propagation of distributions: every uncertain input is drawn from its normal distribution, with
 * its correlations, the whole chain is solved again, and the intervals of the draws are held against those of first order.
 *
 * Source   JCGM 101:2008, 5 to 8; 6.4.7 and 6.4.8 for normal inputs, with correlations by Cholesky; 8.1 for the comparison.
 * Assumes  normal inputs. Draws that are not physical, collapse the supply or leave the curve of the propeller are left
 *          out, counted and warned of: the intervals then hold for the rest only.
 * Throws   OutOfDomain as `operatingPoint`; for draws beyond `DRIVE_DRAWS`; `drive.nothing-uncertain` where no input is;
 *          `numeric.few-draws` where hardly a draw gives a point.
 */
export function driveMonteCarlo(request: DriveRequest, { draws, seed }: DriveDraws): DriveMonteCarlo {
  within(draws, DRIVE_DRAWS.fewest, DRIVE_DRAWS.most, "the number of draws", "");
  const point = operatingPoint(request);
  const drawRequest = requestDraw(request);
  const uniform = uniformsFrom(seed);
  const columns = Object.fromEntries(QUANTITIES.map((name) => [name, new Float64Array(draws)])) as Record<
    keyof DriveNumbers,
    Float64Array
  >;
  const lost = { collapsed: 0, beyondCurve: 0, notPhysical: 0 };
  let used = 0;
  for (let i = 0; i < draws; i++) {
    const drawn = solved(drawRequest(uniform));
    if (typeof drawn === "string") {
      lost[drawn] += 1;
      continue;
    }
    for (const name of QUANTITIES) columns[name][used] = drawn[name];
    used += 1;
  }
  const results = QUANTITIES.flatMap((quantity) => resultOf(quantity, columns[quantity].subarray(0, used), point));
  const warnings = used < draws ? [drawsLost(draws, lost)] : [];
  return { draws, seed, used, ...lost, results, warnings };
}

function resultOf(quantity: keyof DriveNumbers, values: Float64Array, point: OperatingPoint): DriveDrawn[] {
  const firstOrder = point.uncertainties?.[quantity];
  if (firstOrder === undefined || firstOrder.standardUncertainty === 0) return [];
  return [{ quantity, ...againstFirstOrder(values, firstOrder) }];
}

/** A function that draws the request anew, each time into the same one. */
function requestDraw(request: DriveRequest): (uniform: Uniform) => DriveRequest {
  const inputs = (Object.entries(request.uncertainties) as [UncertainInput, number][])
    .map(([input, u]) => ({ input, u, x: inputValue(request, input) }))
    .filter((one): one is { input: UncertainInput; u: number; x: number } => one.u > 0 && one.x !== null);
  if (inputs.length === 0) throw nothingUncertain();
  const causes = independentCauses(
    correlationMatrix(
      inputs.map(({ input }) => input),
      request.correlations,
    ),
  );
  const drawn = changeable(request);
  return (uniform) => {
    const errors = inputs.map(() => normalDraw(uniform));
    inputs.forEach(({ input, u, x }, i) => {
      const error = causes[i]!.reduce((sum, share, j) => sum + share * errors[j]!, 0);
      putInput(drawn, input, x + u * error);
    });
    return drawn;
  };
}

function correlationMatrix(inputs: readonly UncertainInput[], correlations: DriveRequest["correlations"]): number[][] {
  return inputs.map((a) =>
    inputs.map((b) => {
      if (a === b) return 1;
      const pairs = correlations.filter(({ of, and }) => (of === a && and === b) || (of === b && and === a));
      return pairs.reduce((sum, { coefficient }) => sum + coefficient, 0);
    }),
  );
}

function solved(request: DriveRequest): Drawn {
  try {
    requireDrive(request);
  } catch (refusal) {
    if (refusal instanceof OutOfDomain) return "notPhysical";
    throw refusal;
  }
  const chain = chainOf(request);
  const state = solveSteadyState(chain, request.throttle, emptyState());
  if (state.status === "collapsed" || state.status === "runaway") return "collapsed";
  return state.status === "windmilling" ? "beyondCurve" : driveNumbers(chain, state);
}

function drawsLost(draws: number, lost: Record<"collapsed" | "beyondCurve" | "notPhysical", number>): Warning {
  const all = lost.collapsed + lost.beyondCurve + lost.notPhysical;
  return warning({
    code: "drive.draws-lost",
    where: "uncertainties",
    found: `${all} of ${draws} draws gave no point: in ${lost.collapsed} the supply collapses, in ${lost.beyondCurve} the propeller leaves its curve, and ${lost.notPhysical} are not physical, such as a negative resistance`,
    needed: "a point that every likely value of the inputs can hold",
    mend: "Read the intervals as those of the other draws; open the throttle less, or know the inputs better",
  });
}

function nothingUncertain(): OutOfDomain {
  return new OutOfDomain({
    code: "drive.nothing-uncertain",
    where: "uncertainties",
    found: "No input of the point is uncertain, so there is nothing to draw",
    needed: "a standard uncertainty of at least one input",
    mend: "State how well the constants of motor, supply and propeller are known",
  });
}

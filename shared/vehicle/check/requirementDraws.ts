import type { VehicleDraws } from "../../model/vehicle/requirementAnswer.ts";
import { independentCauses } from "../../motor/motorCovariance.ts";
import { normalDraw } from "../../numeric/distributions.ts";
import { uniformsFrom } from "../../numeric/pcg32.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";
import type { SolvedDemand } from "./solvedDemand.ts";

export interface DrawnRequirement {
  /** Probability that each demand is met, in their order. */ readonly each: readonly number[];
  /** That all are met together. */ readonly all: number;
  /** Draws that are not physical or gave no state; they count as not met. */ readonly failed: number;
}

/**
 * How often a requirement is met when all doubtful inputs are drawn from their normal distributions with their correlations.
 *
 * Source   JCGM 101:2008, 5 to 7; 6.4.8 for correlated normal inputs by Cholesky.
 * Assumes  that a demand for a speed is met where the forces left at it are not negative; the tether's force straight in
 *          its factors.
 */
export function requirementDraws(
  doubts: VehicleDoubts,
  numbers: VehicleNumbers,
  demands: readonly SolvedDemand[],
  { draws, seed }: VehicleDraws,
): DrawnRequirement {
  const drawn = numbersDraw(doubts, numbers);
  const uniform = uniformsFrom(seed);
  const met = demands.map(() => 0);
  let [all, failed] = [0, 0];
  for (let draw = 0; draw < draws; draw++) {
    const changed = drawn(() => normalDraw(uniform));
    const kept = isPhysical(changed) ? keptBy(changed, demands) : null;
    if (kept === null) {
      failed += 1;
      continue;
    }
    kept.forEach((one, i) => {
      if (one) met[i]! += 1;
    });
    if (kept.every(Boolean)) all += 1;
  }
  return { each: met.map((count) => count / draws), all: all / draws, failed };
}

function keptBy(numbers: VehicleNumbers, demands: readonly SolvedDemand[]): boolean[] | null {
  try {
    return demands.map(({ meets }) => meets(numbers));
  } catch (error) {
    if (error instanceof OutOfDomain) return null;
    throw error;
  }
}

/** A function that draws the numbers anew. */
function numbersDraw(
  { list, correlations }: VehicleDoubts,
  numbers: VehicleNumbers,
): (normal: () => number) => VehicleNumbers {
  const matrix = list.map((_, i) => list.map((__, j): number => (i === j ? 1 : 0)));
  for (const { a, b, coefficient } of correlations) {
    matrix[a]![b] = coefficient;
    matrix[b]![a] = coefficient;
  }
  const causes = independentCauses(matrix).map((row) => row.flatMap((share, j) => (share === 0 ? [] : [{ share, j }])));
  return (normal) => {
    const errors = list.map(normal);
    return list.reduce((drawn, { shift, standardUncertainty }, i) => {
      const error = causes[i]!.reduce((sum, { share, j }) => sum + share * errors[j]!, 0);
      return shift(drawn, error * standardUncertainty);
    }, numbers);
  };
}

/** Numbers that no vehicle can have are counted as failed, not mended. */
function isPhysical({
  drives,
  drag,
  supply,
  hotelPower,
  mass,
  thrustDeduction,
  wakeFraction,
}: VehicleNumbers): boolean {
  const dragsFit = Object.values(drag).every(
    (one) => one === null || (one.dragArea > 0 && one.linear >= 0 && one.addedMass >= 0),
  );
  const drivesFit = drives.every(({ ahead, astern }) =>
    [ahead, astern].every(
      (one) =>
        one === null ||
        (one.thrustCoefficient > 0 &&
          one.torqueCoefficient > 0 &&
          one.diameter > 0 &&
          one.speedConstant > 0 &&
          one.motorResistance >= 0 &&
          one.noLoadCurrent >= 0),
    ),
  );
  const restFits = supply.openCircuitVoltage > 0 && supply.resistance >= 0 && hotelPower >= 0 && mass > 0;
  return dragsFit && drivesFit && restFits && thrustDeduction < 1 && wakeFraction < 1;
}

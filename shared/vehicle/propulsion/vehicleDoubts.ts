import { bodyDoubts, interactionDoubts, supplyDoubts, tetherDoubts } from "./bodyDoubts.ts";
import type { VehicleDoubts } from "./doubt.ts";
import { dragDoubts } from "./dragDoubts.ts";
import { driveCorrelations, driveDoubts } from "./driveDoubts.ts";
import type { VehicleFacts } from "./vehicleNumbers.ts";

/**
 * Every doubtful input of a vehicle with how to change it. Thrusters of one drive share its doubts; the motor's hold ahead
 * and astern; those of the supply count once.
 */
export function vehicleDoubts(facts: VehicleFacts): VehicleDoubts {
  const list = [
    ...dragDoubts(facts),
    ...interactionDoubts(facts),
    ...facts.numbers.drives.flatMap(driveDoubts),
    ...supplyDoubts(facts),
    ...bodyDoubts(facts),
    ...tetherDoubts(facts),
  ].filter(({ standardUncertainty }) => standardUncertainty > 0);
  const placeOf = new Map(list.map(({ key }, i) => [key, i]));
  const correlations = facts.numbers.drives.flatMap(driveCorrelations).flatMap(({ of, and, coefficient }) => {
    const [a, b] = [placeOf.get(of), placeOf.get(and)];
    return a === undefined || b === undefined || a === b ? [] : [{ a, b, coefficient }];
  });
  return { list, correlations };
}

import { type SolvedTether, TetherRequest } from "../shared/model/vehicle/tetherShape.ts";
import { solveTether } from "../shared/vehicle/tether/solveTether.ts";

type Input = Parameters<typeof TetherRequest.parse>[0];

/** A request as it comes over the wire, with its defaults filled in. */
export const tetherRequest = (input: Input): TetherRequest => TetherRequest.parse(input);

/** The solution of a tether that must have one. */
export function solvedTether(request: TetherRequest): SolvedTether {
  const solution = solveTether(request);
  if (solution.state !== "solved") throw new Error(`the tether is ${solution.state}`);
  return solution;
}

/** The three parts of an uncertain force. */
export const partsOf = ({ forward, starboard, down }: SolvedTether["forceOnVehicle"]): [number, number, number] => [
  forward.value,
  starboard.value,
  down.value,
];

import type { TetherRequest, TetherSolution } from "../../model/vehicle/tetherShape.ts";

export function solveTether(_request: TetherRequest): TetherSolution {
  throw new Error("to come");
}

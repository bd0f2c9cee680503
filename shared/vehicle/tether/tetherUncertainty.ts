import type { TetherRequest } from "../../model/vehicle/tetherShape.ts";
import { extremesOf, tensionOf } from "./describeShape.ts";
import { landingMover } from "./newtonLanding.ts";
import { type LoadFactors, multipliedLoad } from "./tetherLoad.ts";
import { type ShapeProblem, shapeFrom, type TetherAnchor } from "./tetherShape.ts";
import type { Triple } from "./triple.ts";

/** Relative change of an input that the change of the forces is found by. */
const CHANGE = 2e-4;
/** Error of the integration that is fine enough for it. */
const TOLERANCE = 1e-8;

export interface PullUncertainty {
  /** Standard uncertainties of the parts of the force on the vehicle, N. */
  readonly onVehicle: Triple;
  /** The same at the upper end, N. */
  readonly onUpperEnd: Triple;
  /** Of the greatest tension, N. */ readonly greatestTension: number;
  /** Of the belly, m. */ readonly belly: number;
}

/** Pieces that the shape is worked out in for its belly; an even number, so that the middle is among its points. */
const PIECES = 20;

/**
 * Standard uncertainties of the forces at the two ends, of tension and belly from those of coefficients, diameter, weight and current, each
 * independent of the others.
 *
 *   du/dp = -(∂r/∂u)⁻¹ ∂r/∂p        u tension and depth at the anchor, r the miss of the ends, which stay where they are
 *
 * With `chord` null the force on the vehicle is given, has no doubt, and the upper end is free to move.
 *
 * Source   JCGM 100:2008, eq. 10; the derivative of a root by the implicit function theorem.
 */
export function pullUncertainty(
  request: TetherRequest,
  shape: ShapeProblem,
  anchor: TetherAnchor,
  chord: Triple | null,
): PullUncertainty {
  const problem = { ...shape, tolerance: TOLERANCE };
  const base = toldOf(problem, anchor);
  const moved = chord === null ? () => anchor : landingMover({ ...problem, chord }, anchor);
  const variances = base.map(() => 0);
  for (const { factors, u } of doubtsOf(request)) {
    const load = multipliedLoad(problem.load, factors);
    const changed = toldOf({ ...problem, load }, moved(load));
    for (const [i, one] of changed.entries()) variances[i]! += (((one - base[i]!) / CHANGE) * u) ** 2;
  }
  const [tension, belly, a, b, c, d, e, f] = variances.map(Math.sqrt);
  return { onVehicle: [a!, b!, c!], onUpperEnd: [d!, e!, f!], greatestTension: tension!, belly: belly! };
}

/** Greatest tension, N, belly, m, and the tension at the vehicle and at the upper end, N, three parts each. */
function toldOf(problem: ShapeProblem, anchor: TetherAnchor): number[] {
  const states = shapeFrom(problem, anchor, PIECES);
  const { belly, greatestTension } = extremesOf(problem, states);
  const ends = [states[0]!, states[PIECES]!].flatMap(tensionOf);
  return [greatestTension.tension, belly.distance, ...ends];
}

/** What is uncertain: how the load changes with it, and its relative standard uncertainty. */
function doubtsOf({ tether, surroundings }: TetherRequest): { factors: LoadFactors; u: number }[] {
  const { diameter, normalDragCoefficient, tangentialDragCoefficient, netWeightPerLength } =
    tether.relativeUncertainties;
  const by = 1 + CHANGE;
  return [
    { factors: { normal: by, tangential: by }, u: diameter },
    { factors: { normal: by }, u: normalDragCoefficient },
    { factors: { tangential: by }, u: tangentialDragCoefficient },
    { factors: { weight: by }, u: netWeightPerLength },
    { factors: { current: by }, u: surroundings.currentRelativeUncertainty },
  ].filter(({ u }) => u > 0);
}

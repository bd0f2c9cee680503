import type { TetherMotion } from "../../model/vehicle/tether.ts";
import type { TetherRequest, TetherSolution, UncertainTetherForce } from "../../model/vehicle/tetherShape.ts";
import { finiteResult } from "../../quantity/finiteResult.ts";
import { uncertain } from "../../quantity/uncertain.ts";
import { checkTether } from "./checkTether.ts";
import { describeShape, extremesOf, tensionOf } from "./describeShape.ts";
import { searchAnchor } from "./searchAnchor.ts";
import { fastestFlow, loadOf, loadSize, type TetherLoad } from "./tetherLoad.ts";
import { type ShapeProblem, shapeFrom } from "./tetherShape.ts";
import { pullUncertainty } from "./tetherUncertainty.ts";
import { tetherWarnings } from "./tetherWarnings.ts";
import { type Triple, times } from "./triple.ts";

/** Pieces of even length that the shape is given in; an even number, so that the middle of the tether is among its points. */
const PIECES = 40;
const TOLERANCE = 1e-10;

/** How the tether is taken to move, in one sentence. */
const ASSUMPTIONS: Readonly<Record<TetherMotion, string>> = {
  bothEnds:
    "Steady: both ends move with the vehicle, and the water passes all of the tether at the current less the vehicle's velocity.",
  upperEndFixed:
    "As if steady: the upper end rests over the ground, and the tether moves with a share of the vehicle's velocity that falls evenly from all at the vehicle to nothing at the upper end.",
};

/**
 * Shape of a tether in a current and the forces at its ends, in three dimensions.
 *
 *   d(T t)/ds + f = 0,  f = w k + 0.5 ρ C_n d |U_n| U_n + 0.5 ρ C_t π d |U_t| U_t
 *
 * With the upper end's place given, the tension in the belly is searched for; with the force on the vehicle given, the upper
 * end follows.
 *
 * Source   Pode, DTMB report 687 (1951); Berteaux, Buoy Engineering (1976), ch. 4.
 * Assumes  steady; no stretch, no bending stiffness, no lift by strumming; drag of each piece as of a long cylinder in the
 *          flow square to it. Uncertainties to first order.
 * Range    a tether longer than the straight distance. Where part of it would lie above the surface or below the bottom
 *          a warning says so: neither is modelled.
 * Error    about 1e-9 of the length and of the forces; of the model, as the coefficients: 15 % and more if it strums.
 * Throws   InputProblem for sizes that are none, a profile not in order, a tether that does not reach.
 *
 * @example solveTether({ ...squareCase, tether: { diameter: 0.006, length: 60, ... } }).forceOnVehicle.forward.value // 68.2231894959 N
 */
export function solveTether(request: TetherRequest): TetherSolution {
  checkTether(request);
  const shape = shapeProblem(request, TOLERANCE);
  const chord = chordOf(request);
  const common = { assumption: ASSUMPTIONS[request.motion], dragBound: boundOf(shape.load, shape.reach) };
  if (shape.loadSize === 0 && (chord !== null || isZero(givenPull(request)))) {
    return { state: "slack", ...common, convergence: { converged: true, steps: 0, miss: 0 }, warnings: [] };
  }
  const landing = chord === null ? vehicleAnchor(request) : searchAnchor({ ...shape, chord });
  const { converged, steps, miss } = landing;
  const convergence = { converged, steps, miss };
  if (!converged) return { state: "failed", reason: notLanded(miss), ...common, convergence, warnings: [] };
  const states = shapeFrom(shape, landing.anchor, PIECES);
  const described = describeShape(shape, states);
  const { belly, greatestTension: tensest } = extremesOf(shape, states);
  const u = pullUncertainty(request, shape, landing.anchor, chord);
  const greatestTension = { ...tensest, tension: uncertain(tensest.tension, u.greatestTension) };
  const [start, end] = [tensionOf(states[0]!), tensionOf(states[PIECES]!)];
  return finiteResult({
    state: "solved",
    ...described,
    belly: { ...belly, distance: uncertain(belly.distance, u.belly) },
    greatestTension,
    forceOnVehicle: forceWith(start, u.onVehicle),
    forceOnUpperEnd: forceWith(times(end, -1), u.onUpperEnd),
    ...common,
    dragBound: boundOf(shape.load, depthsOf(described.points)),
    convergence,
    warnings: tetherWarnings(request, { ...described, greatestTension }),
  });
}

/** The depths that a tether can lie at, m. */
interface Reach {
  readonly reach: readonly [number, number];
}

/** What the integration needs of a request. */
export function shapeProblem(request: TetherRequest, tolerance: number): ShapeProblem & Reach {
  const load = loadOf(request);
  const { depth } = request.vehicle;
  const reach = [Math.max(0, depth - load.length), depth + load.length] as const;
  return { load, depth, loadSize: loadSize(load, ...reach), tolerance, reach };
}

/** From the vehicle to where the upper end is held, m; null where the force is given instead. */
export function chordOf({ given, vehicle }: TetherRequest): Triple | null {
  if (given.what !== "upperEnd") return null;
  const { forward, starboard, depth } = given.upperEnd;
  return [forward, starboard, depth - vehicle.depth];
}

function givenPull({ given }: TetherRequest): Triple {
  if (given.what !== "forceOnVehicle") return [0, 0, 0];
  const { forward, starboard, down } = given.forceOnVehicle;
  return [forward, starboard, down];
}

const isZero = (pull: Triple) => pull.every((part) => part === 0);

/** With the force given nothing is searched for. */
const vehicleAnchor = (request: TetherRequest) => ({
  anchor: { along: 0, tension: givenPull(request), depth: request.vehicle.depth },
  miss: 0,
  converged: true,
  steps: 0,
});

function boundOf(load: TetherLoad, [from, to]: readonly [number, number]): number {
  return load.normal * fastestFlow(load, from, to) ** 2 * load.length;
}

function depthsOf(points: readonly { readonly depth: number }[]): [number, number] {
  const depths = points.map(({ depth }) => depth);
  return [Math.min(...depths), Math.max(...depths)];
}

function forceWith(force: Triple, u: Triple): UncertainTetherForce {
  return {
    forward: uncertain(force[0], u[0]),
    starboard: uncertain(force[1], u[1]),
    down: uncertain(force[2], u[2]),
  };
}

const notLanded = (miss: number) =>
  `No force was found for which the tether ends where its upper end is held; the best one misses it by ${miss.toPrecision(2)} m. Pay out less, or take the bound of the drag.`;

import { type KnownSlopes, type Landing, type LandingProblem, newtonLanding } from "./newtonLanding.ts";
import { startingCatenary } from "./startingCatenary.ts";
import { shapeFrom, type TetherAnchor } from "./tetherShape.ts";
import { size } from "./triple.ts";

/** Error of the integration that the first search is made with; the last steps alone need the finer one. */
const COARSE = 1e-7;
/** Points that the least tension is looked for at. */
const PIECES = 50;
/** Places along the tether to begin from where the belly of the catenary did not serve, as parts of the length. */
const PLACES = [0.5, 0, 1, 0.25, 0.75] as const;

/**
 * Tension and depth of a tether at one of its points for which both ends land where they are held.
 *
 * Newton's method from an anchor nearby, if one is known, then from the belly of the catenary of the mean load, then from
 * where the best shape so far has its least tension, then from other places.
 *
 * Source   shooting, from the inside outwards: Press et al., Numerical Recipes, 3rd ed. (2007), 18.2.
 * Error    the miss is told; at a tolerance of 1e-10 it is below 1e-8 of the length.
 */
export function searchAnchor(problem: LandingProblem, near: Near | null = null): Landing {
  const { load, depth, chord } = problem;
  const coarse = { ...problem, tolerance: Math.max(COARSE, problem.tolerance) };
  const begins: (() => Near)[] = [
    ...(near === null ? [] : [() => near]),
    () => ({ anchor: startingCatenary(load, depth, chord) }),
    () => ({ anchor: slackest(coarse, best!.anchor) }),
    () => ({ anchor: slackest(coarse, best!.anchor) }),
    ...PLACES.map((place) => () => ({ anchor: startingCatenary(load, depth, chord, place * load.length) })),
  ];
  let steps = 0;
  let best: Landing | null = null;
  for (const begin of begins) {
    const { anchor, known } = begin();
    const found = refined(problem, newtonLanding(coarse, anchor, known ?? null));
    steps += found.steps;
    if (found.converged) return { ...found, steps };
    if (best === null || found.miss < best.miss) best = found;
  }
  return { ...best!, steps };
}

/** A shape nearby, with how the ends moved with its unknowns where that is known. */
export interface Near {
  readonly anchor: TetherAnchor;
  readonly known?: KnownSlopes | null;
}

/** What was found roughly, followed to the end at the tolerance asked for. */
function refined(problem: LandingProblem, rough: Landing): Landing {
  const isFine = rough.converged && problem.tolerance >= COARSE;
  if (isFine || (!rough.converged && rough.miss > 1e-3 * problem.load.length)) return rough;
  const found = newtonLanding(problem, rough.anchor, rough.known);
  return { ...found, steps: rough.steps + found.steps };
}

/** The same shape, told from where its tension is least. */
function slackest(problem: LandingProblem, anchor: TetherAnchor): TetherAnchor {
  const states = shapeFrom(problem, anchor, PIECES);
  const tensions = states.map((state) => size([state[0]!, state[1]!, state[2]!]));
  const at = tensions.indexOf(Math.min(...tensions));
  const state = states[at]!;
  const depth = state[5]! - states[0]![5]! + problem.depth;
  return { along: (at * problem.load.length) / PIECES, tension: [state[0]!, state[1]!, state[2]!], depth };
}

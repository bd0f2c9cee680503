import { bracketedRoot } from "../../numeric/rootFinding.ts";
import { terminalSpeed } from "./closedForms.ts";
import { forcesAt, isDriven, type WayForces, type WayProblem } from "./wayForces.ts";

export interface SteadySpeed {
  /** m/s; 0 where the force at rest does not move it, or it is not driven. */ readonly speed: number;
  readonly atRest: WayForces;
  readonly atSpeed: WayForces;
  readonly converged: boolean;
}

/** Width of the last bracket, relative; wider than that of the bus voltage inside, which it rests on. */
const TOLERANCE = 1e-10;
/** The way is opened up this often where the first guess is too slow. */
const WIDENINGS = 40;

/**
 * Greatest steady speed of a vehicle one way, m/s.
 *
 *   Σ T_i(V) (1 − t) = ½ ρ C_D A V² + a V + tether(V) + weight
 *
 * Source   equilibrium of forces; physics of the parts as `busDemand` and `solveTether`.
 * Assumes  a thrust that falls as the speed grows, or at least slower than the drag rises: one root.
 * Range    drag given for that way; null is not asked.
 *
 * `near` is a speed (m/s) that a like problem has: the search begins about it.
 */
export function steadySpeed(problem: WayProblem, near: number | null = null): SteadySpeed {
  const atRest = forcesAt(problem, 0);
  // A tether may drag it along, a buoyancy lift it: with thrusters that are of no use that is no speed of its own.
  if (!(isDriven(atRest) && atRest.net > 0)) return { speed: 0, atRest, atSpeed: atRest, converged: atRest.converged };
  const net = remembered((V) => forcesAt(problem, V).net);
  const { low, high } = (near !== null && near > 0 && aboutSpeed(net, near)) || bracketOf(problem, net, atRest.net);
  if (high === null) return { speed: low, atRest, atSpeed: forcesAt(problem, low), converged: false };
  const { root, converged } = bracketedRoot(net, low, high, { relativeTolerance: TOLERANCE });
  const atSpeed = forcesAt(problem, root);
  return { speed: root, atRest, atSpeed, converged: converged && atRest.converged && atSpeed.converged };
}

/** The two ends of a bracket are asked for again by the search in it. */
function remembered(net: (speed: number) => number): (speed: number) => number {
  const known = new Map<number, number>();
  return (speed) => {
    const value = known.get(speed) ?? net(speed);
    known.set(speed, value);
    return value;
  };
}

/** Part of a speed that a like problem is looked for about it, and its growth until the change of sign is between. */
const ABOUT = { first: 0.01, growth: 4, trials: 3 } as const;

/** Speeds below and above the steady one, about a speed nearby; null where it is too far off. */
function aboutSpeed(net: (speed: number) => number, near: number): { low: number; high: number } | null {
  const isFast = net(near) > 0;
  for (let [part, trial] = [ABOUT.first, 0]; trial < ABOUT.trials; part *= ABOUT.growth, trial++) {
    const other = near * (isFast ? 1 + part : 1 - part);
    if (net(other) > 0 !== isFast) return { low: Math.min(near, other), high: Math.max(near, other) };
  }
  return null;
}

/** Speeds below and above the steady one, from that which the force at rest would reach. */
function bracketOf(
  problem: WayProblem,
  net: (speed: number) => number,
  force: number,
): { low: number; high: number | null } {
  const { density, drag } = problem.model.numbers;
  const { dragArea, linear } = drag[problem.way]!;
  let high = terminalSpeed({ force, quadratic: 0.5 * density * dragArea, linear }) * (1 + 1e-6);
  let low = 0;
  for (let step = 0; step < WIDENINGS; step++) {
    if (net(high) <= 0) return { low, high };
    [low, high] = [high, 1.3 * high];
  }
  return { low, high: null };
}

import { type TetherLoad, writeFlow } from "./tetherLoad.ts";
import type { TetherAnchor } from "./tetherShape.ts";
import { dot, size, sum, type Triple, times } from "./triple.ts";

/** Width under which two ends count as lying on one line along the load, as a part of the length. */
const ONE_LINE = 1e-9;

/**
 * Tension and depth of the tether at a point `along` it, to start a search from: of the catenary between the two ends under
 * an even load, made of the weight and of the mean drag square to the flow. Without `along`, at its belly.
 *
 * The shape is exact for weight alone and for uniform flow with normal drag alone, which is the same catenary; the tension
 * grows away from the belly under weight and is even under normal drag, and is mixed here by their parts of the load.
 *
 * Source   Berteaux, Buoy Engineering (1976), ch. 4; Pode, DTMB report 687 (1951).
 */
export function startingCatenary(load: TetherLoad, fromDepth: number, chord: Triple, along?: number): TetherAnchor {
  const drag = meanDrag(load, fromDepth, chord);
  const total: Triple = [drag[0], drag[1], drag[2] + load.weight];
  const q = size(total);
  const down: Triple = q === 0 ? [0, 0, 1] : times(total, 1 / q);
  const v = dot(chord, down);
  const sideways = sum(chord, down, -v);
  const isOneLine = size(sideways) < ONE_LINE * load.length;
  const h = isOneLine ? ONE_LINE * load.length : size(sideways);
  const across = isOneLine ? squareTo(down) : times(sideways, 1 / h);
  const a = h / (2 * sinhRatioRoot(Math.sqrt(load.length ** 2 - v * v) / h));
  const toBelly = h / (2 * a) + Math.atanh(v / load.length);
  const belly = a * Math.sinh(toBelly);
  const at = along ?? Math.min(load.length, Math.max(0, belly));
  const slope = (at - belly) / a;
  const secant = Math.hypot(1, slope);
  const weightPart = q === 0 ? 1 : Math.abs(load.weight) / (Math.abs(load.weight) + size(drag));
  const T = q * a * (weightPart * secant + (1 - weightPart));
  const tension = times(sum(across, down, -slope), T / secant);
  const level = a * (Math.asinh(slope) + toBelly);
  const below = a * (Math.cosh(toBelly) - secant);
  return { along: at, tension, depth: fromDepth + across[2] * level + down[2] * below };
}

/** Mean over the straight line between the ends of 0.5 ρ C_n d |U| U, N/m. */
function meanDrag(load: TetherLoad, fromDepth: number, chord: Triple): Triple {
  const places = [0.1, 0.3, 0.5, 0.7, 0.9];
  const flow = new Float64Array(3);
  let total: Triple = [0, 0, 0];
  for (const place of places) {
    writeFlow(load, place * load.length, fromDepth + place * chord[2], flow);
    const U: Triple = [flow[0]!, flow[1]!, flow[2]!];
    total = sum(total, U, (load.normal * size(U)) / places.length);
  }
  return total;
}

/** A direction square to a unit vector, level if it can be. */
function squareTo(down: Triple): Triple {
  const level = Math.hypot(down[0], down[1]);
  return level > 1e-6 ? [-down[1] / level, down[0] / level, 0] : [1, 0, 0];
}

/** Root u > 0 of sinh(u)/u = ratio, by Newton on the logarithm, which stays finite for a ratio of any size. */
function sinhRatioRoot(ratio: number): number {
  const goal = Math.log(Math.max(ratio, 1 + 1e-15));
  let u = ratio < 3 ? Math.sqrt(6 * (Math.exp(goal) - 1)) : Math.log(2 * ratio) + Math.log(Math.log(2 * ratio));
  for (let step = 0; step < 20; step++) {
    const logarithm = u < 1e-3 ? (u * u) / 6 : Math.log((1 - Math.exp(-2 * u)) / (2 * u)) + u;
    const slope = u < 1e-3 ? u / 3 : 1 / Math.tanh(u) - 1 / u;
    const change = (goal - logarithm) / slope;
    u = Math.max(u / 2, u + change);
    if (Math.abs(change) < 1e-12 * u) break;
  }
  return u;
}
